export * from './proof.js';
export * from './verdict.js';
