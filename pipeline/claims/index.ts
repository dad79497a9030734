export * from './proof.js';
export * from './verdict.js';
export * from './near-facts.js';
export * from './explain.js';
export { selfChecks } from './self.js';
