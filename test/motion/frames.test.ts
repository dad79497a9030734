// Frames made by copying what changed, against the same frames drawn whole.
import { describe, expect, test } from 'vitest';
import { drawFrames, drawWhole, sceneOf, timeline } from '../../pipeline/motion/index.js';
import type { Build } from '../../pipeline/theme/index.js';
import { outlined } from './pictures.js';

const motion = { rate: 30, come: 11, stand: 3, go: 2, easing: [0.2, 0.6, 0.2, 1] as const };

describe.each(Object.keys(outlined) as (keyof typeof outlined)[])('%s', (name) => {
  test.each<[Build, number]>([['in-out', 1], ['in', 2]])('%s at scale %d: every frame is the same to the last bit', async (build, scale) => {
    const moving = { scene: sceneOf(outlined[name]), frames: timeline(build, motion), width: 1920 * scale, height: 1080 * scale };
    let i = 0;
    const differing: number[] = [];
    for await (const { pixels } of drawFrames(moving, 3)) {
      // At twice the size, where the rasteriser works in tiles, some are enough.
      if (scale === 1 || i % 5 === 4) if (!pixels.equals(await drawWhole(moving, moving.frames[i]!.state))) differing.push(i);
      i++;
    }
    expect(i).toBe(moving.frames.length);
    expect(differing).toEqual([]);
  }, 60_000);
});
