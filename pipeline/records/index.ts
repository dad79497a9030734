export * from './key.js';
export type * from './episode.js';
export * from './tables.js';
export * from './bare.js';
