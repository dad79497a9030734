export { type Caution, cautionsFor } from './cautions.js';
export { type CautionRule, cautionRules, type Sign } from './rules.js';
