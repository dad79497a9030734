// What holds in every frame of every picture that moves, read from the frame's SVG and not from what made it.
import { expect } from 'vitest';
import { frameSvg, type Scene, sceneOf, timeline } from '../../pipeline/motion/index.js';

const motion = { rate: 30, come: 20, stand: 0, go: 4, easing: [0.2, 0.6, 0.2, 1] as const };

interface SeenText {
  words: string;
  opacity: number;
}

function textsOf(svg: string): SeenText[] {
  return [...svg.matchAll(/<text([^>]*)>([\s\S]*?)<\/text>/g)].map(([, attributes, inside]) => ({
    words: inside!.replace(/<[^>]*>/g, ''), opacity: Number(/ fill-opacity="([^"]*)"/.exec(attributes!)?.[1] ?? 1),
  }));
}

/** Factors by which things in the frame are shortened, each once. */
function factorsOf(svg: string): number[] {
  return [...new Set([...svg.matchAll(/<g transform="matrix\(([\d.]+) 0 0 ([\d.]+) -?[\d.]+ -?[\d.]+\)">/g)].map((m) => Number(m[1]) * Number(m[2])))];
}

/** `figures`: the texts that must not be seen before lengths are whole. */
export function expectHonest(svg: string, figures: readonly string[] = []): Scene {
  const scene = sceneOf(svg);
  const final = new Map(textsOf(frameSvg(scene, timeline('in', motion).at(-1)!.state, all(scene))).map((t) => [t.words, t.opacity]));
  expect(final.size, 'a finished picture has words').toBeGreaterThan(0);
  expect(new Set(final.keys()), 'the last frame shows what the picture shows').toEqual(new Set(textsOf(svg).map((t) => t.words)));
  for (const [i, { state }] of timeline('in-out', motion).entries()) {
    const frame = frameSvg(scene, state, all(scene));
    const what = `frame ${i + 1}`;
    const texts = textsOf(frame);
    // Nothing is counted, cut or altered on the way: whatever can be read is what will stand there.
    for (const { words, opacity } of texts) {
      expect(final.has(words), `${what}: "${words}"`).toBe(true);
      expect(opacity, what).toBeLessThanOrEqual(final.get(words)!);
    }
    const factors = factorsOf(frame);
    expect(factors.length, `${what}: lengths grow by one factor`).toBeLessThanOrEqual(1);
    const growing = scene.leaves.some((l) => l.role === 'bars') && state.done.bars < 1;
    if (growing && state.done.bars > 0) expect(factors).toHaveLength(1);
    if (growing) for (const { words } of texts) expect(figures, `${what}: a figure beside a length that is not its own`).not.toContain(words);
    // What is uncovered bit by bit holds no text.
    for (const [clipped] of frame.matchAll(/<g clip-path="url\(#uncovered-\d+\)">.*?<\/g>/g)) expect(clipped).not.toContain('<text');
  }
  return scene;
}

function all({ width, height }: Scene) {
  return { left: 0, top: 0, right: width, bottom: height, width, height };
}
