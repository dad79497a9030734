export * from './exact.js';
export * from './units.js';
export * from './quantity.js';
export * from './conversion.js';
export * from './words.js';
export * from './show.js';
