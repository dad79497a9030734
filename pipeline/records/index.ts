export * from './key.js';
export type * from './episode.js';
export * from './tables.js';
export * from './bare.js';
export * from './outline.js';
export * from './assemble.js';
export * from './write-readings.js';
export { statedKinds } from './record-shape.js';
export { commonMeasures, constantPhases } from './common-names.js';
