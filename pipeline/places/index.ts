export * from './place.js';
export * from './finding.js';
export * from './nearest.js';
