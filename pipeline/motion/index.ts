// Motion: a finished picture in, its frames and the files made of them out.
export { drawFrames, drawWhole } from './frames.js';
export { frameSvg } from './frame-svg.js';
export { type Scene, sceneOf } from './scene.js';
export { lengthOf, mostFrames, timeline } from './timeline.js';
export { movieArguments } from './movie.js';
export { makeFiles } from './make-files.js';
