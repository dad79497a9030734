export type { Check, Context, Example, Report } from './check.js';
export { checks } from './list.js';
export { checksTable, describeCheck } from './describe.js';
export { type Limits, readLimits } from './limits.js';
export { runChecks, weigh } from './run.js';
export { type ThresholdName, type ThresholdRow, thresholds } from './thresholds.js';
