export * from './fact.js';
export * from './id.js';
export * from './facts.js';
export * from './stored.js';
export * from './explain.js';
export { suggestIds } from './suggest.js';
export * from './quotes.js';
export { type Uncertainty, uncertaintyOf } from './uncertainty.js';
export { type RoundingRule, roundingRules } from './rounding.js';
export { betterWords, factName, nameOf, phaseNote, placeOfName, quantityName } from './naming.js';
export { type Basis, basisOf } from './basis.js';
export { isIdle, roomParts } from './neighbours.js';
export { isMeasured } from './measured.js';
export { bestOf, type Closeness, tooClose, whyClose } from './closeness.js';
export { inOrderOfNames } from './order.js';
// What a renderer needs of the record reaches it through this room.
export { constantPhases, writeReadings, type Key, type KeyField, type KeyParts, keyFields, makeKey, splitKey, withFields } from '../records/index.js';
export type { Curve, EpisodeText, Measure, Named, Part, PictureRequest, Reading, Setting, Setup, Trace } from '../records/index.js';
