export { ask } from './ask.js';
export type { Answer, Question } from './question.js';
