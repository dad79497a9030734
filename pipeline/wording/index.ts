export * from './fair.js';
export * from './suggest.js';
export * from './told.js';
export * from './way.js';
