export * from './moments.js';
export * from './quantile.js';
export * from './student.js';
export * from './grubbs.js';
export * from './sound-level.js';
export * from './trend.js';
