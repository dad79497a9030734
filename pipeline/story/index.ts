// The story of an episode: what is worth telling in it, and in which order it is told.
export { changed, hasRatios } from './changes.js';
export { limits } from './limits.js';
export type { Proposed } from './observation.js';
export { inStoryOrder, plain as plainHeading } from './order.js';
export { surprises } from './surprises.js';
