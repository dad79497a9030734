export * from './tokens.js';
export * from './numbers.js';
export * from './mentions.js';
export * from './sentences.js';
export * from './hedges.js';
export * from './comparisons.js';
export * from './relations.js';
export * from './unit-words.js';
