// What was said wrong, told in a line; and the graphic that shows it.
import { expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { planGraphics } from '../../pipeline/graphics/index.js';
import { narrate, narrationText } from '../../pipeline/narration/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf } from '../facts/episode.js';
import { place } from './episodes.js';

const readings = 'a/s/w/temperature/core/load: 60.0 60.2 60.1 °C\nb/s/w/temperature/core/load: 64.1 64.3 64.2 °C';
const with_ = (...corrections: { said: string; fact: string; where: string; reason?: string }[]) => factsOf(readings, { corrections: corrections.map((c) => ({ ...c, place, saidPlace: place, factPlace: place })) });
const difference = 'difference:b/s/w/temperature/core/load~setup=a';
const told = (facts: ReturnType<typeof factsOf>) => /## To correct\n\n([\s\S]*?)\n\n##/.exec(narrationText(facts, narrate(facts), []))?.[1];

test.each([
  [{ said: '5.1 K', fact: difference, where: '3:12', reason: 'one run was missing' }, '- At 3:12 we said 5.1 K. That was wrong: core temperature, difference (b, s, w, load, against a) is four point one degrees. One run was missing.'],
  [{ said: '46 °C.', fact: 'b/s/w/temperature/core/load', where: 'thumbnail' }, '- In the thumbnail we said 46 °C. That was wrong: core temperature (b, s, w, load) is sixty-four point two degrees.'],
  [{ said: '46 °C', fact: 'b/s/w/temperature/core/load', where: 'on the second chart' }, '- On the second chart we said 46 °C. That was wrong: core temperature (b, s, w, load) is sixty-four point two degrees.'],
])('%j', (correction, line) => expect(told(with_(correction))).toBe(line));

test('what has no fact behind it is told nowhere', () => {
  const facts = with_({ said: '5 K', fact: 'nothing of the kind', where: '3:12' });
  expect(told(facts)).toBeUndefined();
  expect(planGraphics(facts).map((p) => p.kind)).not.toContain('correction');
});

test('each has a graphic, told apart by its name, before the end', () => {
  const facts = with_({ said: '5.1 K', fact: difference, where: '3:12' }, { said: '46 °C', fact: 'b/s/w/temperature/core/load', where: 'thumbnail' });
  expect(planGraphics(facts).filter((p) => p.kind === 'correction').map((p) => [p.name, p.text, p.facts])).toEqual([
    ['correction-1', '5.1 K', [difference]], ['correction-2', '46 °C', ['mean:b/s/w/temperature/core/load']],
  ]);
});

test('the figure told as right is not flagged where the lines are read out', () => {
  const facts = with_({ said: '46 °C', fact: 'b/s/w/temperature/core/load', where: 'thumbnail' });
  const { mentions } = proof(new Source('narration.md', told(facts)!.slice(2)), facts);
  expect(mentions.filter((m) => m.verdict === 'disagrees').map((m) => m.text)).toEqual([]);
});
