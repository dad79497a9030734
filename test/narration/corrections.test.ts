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

/** What is right as narration says it: the plainest sentence with the fact in it. */
const sentenceOf = (facts: ReturnType<typeof factsOf>, id: string) => narrate(facts).filter((s) => s.facts.includes(id)).sort((a, b) => a.facts.length - b.facts.length || a.text.length - b.text.length)[0];

test('what is right is told by the sentence that says it', () => {
  const facts = with_({ said: '5.1 K', fact: difference, where: '3:12', reason: 'one run was missing' });
  const right = sentenceOf(facts, difference)!.text;
  expect(right).toContain('four point one degrees');
  expect(told(facts)).toBe(`- At 3:12 we said 5.1 K. That was wrong. ${right} One run was missing.`);
});

test.each([
  ['thumbnail', 'In the thumbnail'], ['the description', 'In the description'], ['on the second chart', 'On the second chart'], ['3:12', 'At 3:12'],
])('where it was said: %s', (where, words) => {
  expect(told(with_({ said: '46 °C.', fact: 'b/s/w/temperature/core/load', where }))).toMatch(new RegExp(`^- ${words} we said 46 °C\\. That was wrong\\. .*sixty-four point two degrees`));
});

test('where no sentence says it, the figure has its name', () => {
  const facts = with_({ said: '5.1 K', fact: difference, where: '3:12' });
  expect(/## To correct\n\n(.*)/.exec(narrationText(facts, [], []))?.[1]).toBe('- At 3:12 we said 5.1 K. That was wrong: core temperature, difference (b, s, w, load, against a) is four point one degrees.');
});

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
