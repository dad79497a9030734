export * from './order.js';
export * from './place.js';
export * from './finding.js';
export * from './nearest.js';
export * from './width.js';
export * from './print.js';
export * from './sarif.js';
