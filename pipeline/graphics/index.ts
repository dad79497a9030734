// Graphics: a request and the facts in, a picture that is ready to be drawn out; and every picture's pixels.
export type { Graphic } from './graphic.js';
export { graphicKinds, graphics, rowsOf } from './kinds.js';
export { planGraphics } from './plan.js';
export { prepareGraphic } from './prepare.js';
export { rasterise } from './rasterise.js';
