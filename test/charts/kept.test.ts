// Small specs and pictures kept as files: a change of look is seen in a review. `npx vitest run test/charts/kept -u` keeps a new one.
import { expect, test } from 'vitest';
import { prepareChart } from '../../pipeline/charts/index.js';
import { withoutBuild } from '../../pipeline/theme/index.js';
import { cases, requestOf } from './requests.js';
import { wide } from '../theme/stages.js';

const kept = ['share', 'per-watt', 'dots'];

test.each(cases.filter((c) => kept.includes(c.name)))('$name', async (c) => {
  const { value } = prepareChart(requestOf(c), c.facts(), wide);
  const { spec } = JSON.parse(value!.inputs) as { spec: unknown };
  await expect(`${JSON.stringify(spec, null, 1)}\n`).toMatchFileSnapshot(`kept/${c.name}.json`);
  const { svg } = await value!.draw();
  const lines = withoutBuild(svg).replace(/\d+\.\d{4,}/g, (n) => String(Math.round(Number(n) * 1000) / 1000)).replaceAll('><', '>\n<');
  await expect(`${lines}\n`).toMatchFileSnapshot(`kept/${c.name}.svg`);
});
