// Every kind of chart and graphic moves without a false number or order in any frame, and its frames are the whole ones to the last bit.
import { describe, expect, test } from 'vitest';
import { prepareChart } from '../../pipeline/charts/index.js';
import { prepareGraphic } from '../../pipeline/graphics/index.js';
import { drawFrames, drawWhole, sceneOf, timeline } from '../../pipeline/motion/index.js';
import type { Prepared, Stage } from '../../pipeline/theme/index.js';
import { cases as charts, requestOf as chartRequest } from '../charts/requests.js';
import { cases as graphics, requestOf as graphicRequest } from '../graphics/requests.js';
import { stages, template } from '../theme/stages.js';
import { expectHonest } from './honesty.js';

const all: [string, (stage: Stage) => Prepared | undefined][] = [
  ...charts.map((c): [string, (stage: Stage) => Prepared | undefined] => [`chart ${c.name}`, (stage) => prepareChart(chartRequest(c), c.facts(), stage).value]),
  ...graphics.map((c): [string, (stage: Stage) => Prepared | undefined] => [`graphic ${c.name}`, (stage) => prepareGraphic(graphicRequest(c), c.facts(), stage, template).value]),
];

/** The figures of a picture as it may write them: with their unit and without. */
function figuresOf({ table }: Prepared): string[] {
  return (table?.rows ?? []).flatMap((row) => row.slice(1)).filter((text) => /^[+−]?\d/.test(text)).flatMap((text) => [text, text.split(/[\s\u202f\u00a0]/)[0]!]);
}

describe.each(all)('%s', (_name, prepare) => {
  test('is honest in every frame, on every stage', async () => {
    let drawn = 0;
    for (const stage of stages) {
      const prepared = prepare(stage);
      if (!prepared) continue;
      drawn++;
      const { svg, outlined } = await prepared.draw({ draft: true });
      const scene = expectHonest(svg, figuresOf(prepared));
      // What moves is the same before and after text is turned into outlines.
      const count = (role: string, of = scene): number => of.leaves.filter((l) => l.role === role && l.element !== 'text').length;
      const moving = sceneOf(outlined);
      for (const role of ['bars', 'line']) expect(count(role, moving), role).toBe(count(role));
      // A draft says so from the first frame on.
      expect(moving.leaves.filter((l) => l.role === 'panel').length).toBeGreaterThanOrEqual(2);
    }
    expect(drawn).toBeGreaterThan(0);
  }, 30_000);
});

// Of each kind one, and not every frame: test/motion/frames.test.ts has them all.
const kinds = new Map(all.filter(([name]) => /grouped$|idle-load$|dots$|trace$|between-setups|ranking$|gauge|span/.test(name)));
test.each([...kinds])('%s: frames are the whole ones to the last bit', async (_name, prepare) => {
  for (const stage of stages.slice(0, 2)) {
    const { outlined } = (await prepare(stage)?.draw()) ?? {};
    if (!outlined) continue;
    const moving = { scene: sceneOf(outlined), frames: timeline('in-out', { rate: 30, come: 11, stand: 1, go: 3, easing: [0.16, 1, 0.3, 1] }), width: stage.width, height: stage.height };
    let i = 0;
    for await (const { pixels } of drawFrames(moving)) {
      if (i % 3 === 1) expect(pixels.equals(await drawWhole(moving, moving.frames[i]!.state)), `${stage.id}, frame ${i + 1}`).toBe(true);
      i++;
    }
  }
}, 30_000);
