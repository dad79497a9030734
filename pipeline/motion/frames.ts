// The frames of a moving picture as pixels: each is the one before with the box that changed drawn anew and its rows copied in.
import { type Box, changedBox, viewOf } from './changes.js';
import { frameSvg } from './frame-svg.js';
import { pixelsOf } from './pixels.js';
import type { Scene } from './scene.js';
import { type Frame, stateAt, type State } from './timeline.js';

export interface Moving {
  scene: Scene;
  frames: readonly Frame[];
  /** In pixels; a multiple of the scene's. */
  width: number;
  height: number;
}

export interface DrawnFrame {
  /** Straight RGBA of the whole frame; only good until the next frame is asked for. */
  pixels: Buffer;
  /** What differs from the frame before, and its pixels; undefined where nothing does. */
  changed?: Box & { pixels: Buffer };
  stands: number;
}

const empty: State = { ...stateAt(0, [0, 0, 1, 1]), whole: 0 };

/** At most `inFlight` boxes are drawn at a time. */
export async function* drawFrames({ scene, frames, width, height }: Moving, inFlight = 2): AsyncGenerator<DrawnFrame> {
  const scale = width / scene.width;
  const boxes = frames.map(({ state }, i) => changedBox(scene, i === 0 ? empty : frames[i - 1]!.state, state, scale));
  const drawing: Promise<Buffer | undefined>[] = [];
  const begin = (i: number): void => {
    const [frame, box] = [frames[i], boxes[i]];
    const drawn = frame && box ? drawBox(scene, frame.state, box, scale) : Promise.resolve(undefined);
    // A failure is met where the frame is waited for.
    drawn.catch(() => undefined);
    drawing[i] = drawn;
  };
  for (let i = 0; i < inFlight; i++) begin(i);
  const pixels = Buffer.alloc(width * height * 4);
  for (const [i, { stands }] of frames.entries()) {
    const box = boxes[i];
    const drawn = await drawing[i];
    delete drawing[i];
    begin(i + inFlight);
    if (box && drawn) copyRows(drawn, box.width, pixels, width, box);
    yield { pixels, stands, ...(box && drawn && { changed: { ...box, pixels: drawn } }) };
  }
}

/** The rasteriser works in tiles of this side, counted from the corner of what it is asked for: a box is asked for in the pieces that the whole would be. */
const tile = 2000;

async function drawBox(scene: Scene, state: State, box: Box, scale: number): Promise<Buffer> {
  const across = cuts(box.left, box.width);
  const down = cuts(box.top, box.height);
  const draw = (part: Box): Promise<Buffer> => pixelsOf(frameSvg(scene, state, viewOf(part, scale)));
  if (across.length === 1 && down.length === 1) return draw(box);
  const whole = Buffer.alloc(box.width * box.height * 4);
  for (const [top, height] of down) {
    for (const [left, width] of across) copyRows(await draw({ left, top, width, height }), width, whole, box.width, { left: left - box.left, top: top - box.top, width, height });
  }
  return whole;
}

/** Begin and length of each piece. */
function cuts(from: number, length: number): [number, number][] {
  const pieces: [number, number][] = [];
  for (let at = from; at < from + length;) {
    const end = Math.min(from + length, (Math.floor(at / tile) + 1) * tile);
    pieces.push([at, end - at]);
    at = end;
  }
  return pieces;
}

function copyRows(from: Buffer, fromWidth: number, to: Buffer, toWidth: number, { left, top, width, height }: Box): void {
  for (let row = 0; row < height; row++) from.copy(to, ((top + row) * toWidth + left) * 4, row * fromWidth * 4, (row * fromWidth + width) * 4);
}

/** The same frame drawn whole, for those who hold the two to each other. */
export function drawWhole({ scene, width, height }: Moving, state: State): Promise<Buffer> {
  return pixelsOf(frameSvg(scene, state, { left: 0, top: 0, right: scene.width, bottom: scene.height, width, height }));
}
