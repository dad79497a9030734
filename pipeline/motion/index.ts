// Motion: a finished picture in, its frames and the files made of them out.
export { drawFrames, type DrawnFrame, drawWhole, type Moving } from './frames.js';
export { frameSvg } from './frame-svg.js';
export { type RoleName, roles } from './roles.js';
export { type Scene, sceneOf } from './scene.js';
export { type Frame, lengthOf, mostFrames, type State, stateAt, timeline } from './timeline.js';
export { movieArguments } from './movie.js';
export { type MadeFiles, makeFiles } from './make-files.js';
