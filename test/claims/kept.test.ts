// After an edit only what changed, or stands on what changed, is made anew.
import { expect, it } from 'vitest';
import { KeptSteps } from '../../pipeline/claims/kept.js';

/** Each step leaves the sum of what was said since the last heading ("#"). */
function run(kept: KeptSteps<number, number>, texts: readonly string[]): { sums: number[]; made: string[] } {
  const made: string[] = [];
  let state = 0;
  const sums = texts.map((text) => (state = kept.get(text, state, () => { made.push(text); return text.startsWith('#') ? 0 : state + Number(text); })));
  kept.turn();
  return { sums, made };
}

const texts = ['#a', '1', '2', '#b', '3', '4', '#c', '5', '6', '#d', '7'];

it.each([
  ['nothing', texts, []],
  ['a step changed', ['#a', '1', '9', '#b', ...texts.slice(4)], ['9', '#b']],
  ['a step added that stands again below', ['#a', '1', '7', '2', '#b', ...texts.slice(4)], ['7', '2', '#b']],
  ['a step left out', ['#a', '2', '#b', ...texts.slice(4)], ['2', '#b']],
  ['a section left out', ['#a', '1', '2', '#c', ...texts.slice(7)], ['#c']],
  ['a section added', ['#a', '1', '2', '#e', '8', '#b', ...texts.slice(4)], ['#e', '8', '#b']],
])('%s', (_, edited, anew) => {
  const kept = new KeptSteps<number, number>((a, b) => a === b);
  expect(run(kept, texts).made).toEqual(texts);
  const fresh = run(new KeptSteps<number, number>((a, b) => a === b), edited);
  const again = run(kept, edited);
  expect(again.sums).toEqual(fresh.sums);
  expect(again.made).toEqual(anew);
});
