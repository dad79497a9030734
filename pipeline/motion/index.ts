// Motion: a finished picture in, its frames and the files made of them out.
export { drawFrames, type DrawnFrame, drawWhole, type Moving } from './frames.js';
export { frameSvg } from './frame-svg.js';
export { type RoleName, roles } from './roles.js';
export { type Scene, sceneOf } from './scene.js';
export { type Build, builds, type Frame, lengthOf, mostFrames, type State, stateAt, timeline } from './timeline.js';
export { movieArguments, type MovieFormat, movieFormats } from './movie.js';
export { makeFiles } from './make-files.js';
