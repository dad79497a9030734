export { narrate } from './narrate.js';
export { type Sentence, speakingTime, wordsPerMinute } from './sentence.js';
export type { VoiceOptions } from './voice.js';
