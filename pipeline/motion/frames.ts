// The frames of a moving picture as pixels: each is the one before with the box that changed drawn anew and its rows copied in.
import { type Box, changedBox, joined, seenBox, viewOf } from './changes.js';
import { frameSvg } from './frame-svg.js';
import { pixelsOf } from './pixels.js';
import type { Scene } from './scene.js';
import type { Frame, State } from './timeline.js';

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

/** At most `inFlight` boxes are drawn at a time. */
export async function* drawFrames({ scene, frames, width, height }: Moving, inFlight = 2): AsyncGenerator<DrawnFrame> {
  const scale = width / scene.width;
  const boxes = frames.map(({ state }, i) => changedBox(scene, frames[i - 1]?.state, state, scale));
  const drawing: Promise<Buffer | undefined>[] = [];
  const begin = (i: number): void => {
    const [frame, box] = [frames[i], boxes[i]];
    const drawn = frame && box ? drawBox(scene, frame.state, box, scale) : Promise.resolve(undefined);
    // A failure is met where the frame is waited for.
    drawn.catch(() => undefined);
    drawing[i] = drawn;
  };
  for (let i = 0; i < inFlight; i++) begin(i);
  const full = Buffer.alloc(width * height * 4);
  const thinned = Buffer.alloc(width * height * 4);
  let wholeBefore = 0;
  for (const [i, { state, stands }] of frames.entries()) {
    const { whole } = state;
    const drawn = await drawing[i];
    delete drawing[i];
    begin(i + inFlight);
    if (boxes[i] && drawn) copyRows(drawn, boxes[i]!.width, full, width, boxes[i]!);
    const shown = seenBox(scene, state, scale);
    const box = joined(boxes[i], whole !== wholeBefore ? shown : undefined);
    if (whole !== 1 && shown) thin(full, thinned, width, shown, whole);
    const pixels = whole === 1 ? full : thinned;
    wholeBefore = whole;
    yield { pixels, stands, ...(box && { changed: { ...box, pixels: box === boxes[i] && drawn && whole === 1 ? drawn : cutOut(pixels, width, box) } }) };
  }
}

/** How much of the whole is there is worked out on its pixels: it needs no drawing. */
function thin(from: Buffer, to: Buffer, width: number, { left, top, width: across, height }: Box, share: number): void {
  for (let row = top; row < top + height; row++) {
    const begin = (row * width + left) * 4;
    const end = begin + across * 4;
    if (share === 0) {
      to.fill(0, begin, end);
      continue;
    }
    from.copy(to, begin, begin, end);
    for (let i = begin + 3; i < end; i += 4) to[i] = Math.round(from[i]! * share);
  }
}

function cutOut(from: Buffer, fromWidth: number, { left, top, width, height }: Box): Buffer {
  const part = Buffer.alloc(width * height * 4);
  for (let row = 0; row < height; row++) from.copy(part, row * width * 4, ((top + row) * fromWidth + left) * 4, ((top + row) * fromWidth + left + width) * 4);
  return part;
}

/** The rasteriser works in tiles of this side, counted from the corner of what it is asked for: a box is asked for in the pieces that the whole would be. */
const tile = 2000;

async function drawBox(scene: Scene, state: State, box: Box, scale: number): Promise<Buffer> {
  const across = cuts(box.left, box.width);
  const down = cuts(box.top, box.height);
  const draw = (part: Box): Promise<Buffer> => pixelsOf(frameSvg(scene, { ...state, whole: 1 }, viewOf(part, scale)));
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
export async function drawWhole({ scene, width, height }: Moving, state: State): Promise<Buffer> {
  const view = { left: 0, top: 0, right: scene.width, bottom: scene.height, width, height };
  const pixels = await pixelsOf(frameSvg(scene, { ...state, whole: 1 }, view));
  if (state.whole !== 1) thin(pixels, pixels, width, { left: 0, top: 0, width, height }, state.whole);
  return pixels;
}
