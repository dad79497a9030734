export * from './encoding.js';
export * from './csv.js';
export * from './layout.js';
export * from './sensor-log.js';
export * from './read-log-file.js';
export * from './frame-log.js';
export * from './cells.js';
export { lowInWords, stutterInWords, timeInWords } from './pacing.js';
export type { StatedFor } from './throttle.js';
