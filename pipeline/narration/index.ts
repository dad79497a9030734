export { narrate } from './narrate.js';
export { narrationText } from './text.js';
export { type BoundPart, boundParts, renderBound } from './bound.js';
export { type Sentence, speakingTime, wordsPerMinute } from './sentence.js';
export type { VoiceOptions } from './voice.js';
