export { type Asked, ask } from './ask.js';
export type { Answer, ColumnAnswer, Question } from './question.js';
