export { rasterise } from './rasterise.js';
