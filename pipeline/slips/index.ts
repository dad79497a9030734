export * from './slip.js';
export * from './alternatives.js';
export * from './naming.js';
export * from './other-quantity.js';
