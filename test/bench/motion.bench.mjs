import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { median, project } from './measure.mjs';

export const says = 'moving pictures of the demo: raw frames against drawing every frame whole, as many in flight; and with the animation packed';

const load = (path) => import(pathToFileURL(join(project, 'dist', path)).href);
/** Boxes, or frames, that are drawn at a time. */
const inFlight = 2;

export async function run() {
  const [{ open }, { planPictures }, { drawFrames, drawWhole, makeFiles, sceneOf, timeline }, { shippedTheme }, { template }] = await Promise.all([load('build.js'), load('draw.js'), load('motion/index.js'), load('records/index.js'), load('files/index.js')]);
  const { episodes, asked } = open({ data: join(project, 'data'), only: ['one-card-two-boxes'], cache: undefined });
  const facts = await episodes.facts(asked[0]);
  const { pictures } = await planPictures(facts);
  const { motion } = shippedTheme('dark', template);
  const rows = [];
  const ratios = [];
  for (const name of ['between-setups', 'temperature-core', 'figure-rise']) {
    const { prepared } = pictures.find((p) => p.sheets[0].prepared.name === name).sheets[0];
    const { outlined } = await prepared.draw();
    // A frame that stands is one frame for both.
    const moving = { scene: sceneOf(outlined), frames: timeline('in-out', motion), width: 1920, height: 1080 };
    const count = moving.frames.length;
    const timed = async (work) => { const from = process.hrtime.bigint(); await work(); return Number(process.hrtime.bigint() - from) / 1e6; };
    const boxes = () => timed(async () => { for await (const frame of drawFrames(moving, inFlight)) frame.pixels[0] |= 0; });
    const whole = () => timed(async () => {
      const queue = [...moving.frames];
      await Promise.all(Array.from({ length: inFlight }, async () => { for (let f = queue.shift(); f; f = queue.shift()) await drawWhole(moving, f.state); }));
    });
    await boxes();
    const pairs = [];
    for (let i = 0; i < 5; i++) pairs.push(i % 2 ? [await whole(), await boxes()] : [await boxes(), await whole()].reverse());
    const rate = median(pairs.map(([w, b]) => w / b));
    const packed = await timed(() => makeFiles(moving, motion.rate, { webp: true, png: false, films: [] }));
    const [w, b] = [0, 1].map((k) => median(pairs.map((p) => p[k])));
    ratios.push(rate);
    rows.push({ what: `${name}: ${count} frames, rate ÷ whole frames`, ratio: rate, detail: `${(1000 * count / b).toFixed(0)} against ${(1000 * count / w).toFixed(0)} frames a second; packed as WebP ${(1000 * count / packed).toFixed(0)}` });
  }
  // Held as time against time, so that less is better as everywhere here: 1.4 times the rate is 0.71 of the time.
  return [...rows, { what: 'the slowest of them, time ÷ that of whole frames', ratio: 1 / Math.min(...ratios), most: 0.71 }];
}
