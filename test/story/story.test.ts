// What is worth telling, on records whose story is plain to see.
import { describe, expect, test } from 'vitest';
import { Facts } from '../../pipeline/facts/index.js';
import { changed, inStoryOrder, limits, plainHeading, surprises } from '../../pipeline/story/index.js';
import { sample } from '../charts/sample.js';
import { place } from '../charts/sample.js';
import { readQuantity } from '../../pipeline/quantities/index.js';

type Kinds = Record<string, 'stock' | 'power-limit' | 'undervolt' | 'overclock'>;

function facts(readings: Record<string, string>, { kinds = {}, prices = {}, setups = { a: 'Alder', b: 'Birch' } }: { kinds?: Kinds; prices?: Record<string, string>; setups?: Record<string, string> } = {}): Facts {
  const episode = sample({
    setups, settings: { stock: 'Stock', set: 'Set' },
    measures: { temperature: ['Temperature', 'lower'], power: ['Power', 'lower'], noise: ['Noise', 'lower'], frame_rate: ['Frame rate', 'higher'], voltage: ['Voltage', 'neither'] },
    parts: { core: 'Core', board: 'Board', fan: 'Fan', average: 'Average', low: 'Low' }, readings,
  });
  for (const [id, kind] of Object.entries(kinds)) episode.settings.get(id)!.kind = kind;
  for (const [id, text] of Object.entries(prices)) {
    const q = readQuantity(text);
    if ('why' in q) throw new Error(q.why);
    episode.setups.get(id)!.price = { amount: q.quantity, place };
  }
  return new Facts(episode);
}

describe('what changed most', () => {
  // 12 K is twelve steps of one kelvin; 3 % of a frame rate is a step and a half of two percent.
  const two = facts({
    'a/stock/scene/frame_rate/average/load': '100.0 100.2 100.1 fps', 'b/stock/scene/frame_rate/average/load': '97.0 97.1 97.2 fps',
    'a/stock/scene/temperature/core/load': '60 60 61 °C', 'b/stock/scene/temperature/core/load': '72 72 73 °C',
    'a/stock/scene/voltage/core/load': '1.0 1.0 1.0 V', 'b/stock/scene/voltage/core/load': '0.5 0.5 0.5 V',
  });
  test('is ranked by what matters in it, and not by percents or by size', () => {
    expect(changed(two).map((o) => o.measure)).toEqual(['temperature', 'frame_rate']);
    expect(changed(two)[0]!.why).toMatch(/^Core temperature changes from 60.°C to 72.°C between Alder and Birch$/);
    expect(changed(two).map((o) => o.weight)).toEqual(changed(two).map((o) => o.weight).sort((a, b) => b - a));
  });
  test('what the record says matters comes before what it says nothing of, however much that changed', () => {
    const readings = { 'a/stock/scene/power/board/load': '100 100 101 W', 'b/stock/scene/power/board/load': '200 200 201 W', 'a/stock/scene/noise/fan/load': '30 30 30 dB(A)', 'b/stock/scene/noise/fan/load': '34 34 34 dB(A)' };
    const said = facts(readings);
    expect(changed(said).map((o) => o.measure)).toEqual(['power', 'noise']);
    const q = readQuantity('1 dB(A)');
    if ('why' in q) throw new Error(q.why);
    said.about.measures.get('noise')!.matters = q.quantity;
    expect(changed(said).map((o) => o.measure)).toEqual(['noise', 'power']);
  });
  test('what has no better end, and what the runs cannot tell apart, did not change', () => {
    const none = facts({ 'a/stock/scene/noise/fan/load': '38 42 40 dB(A)', 'b/stock/scene/noise/fan/load': '39 42 41 dB(A)', 'a/stock/scene/voltage/core/load': '1 1 V', 'b/stock/scene/voltage/core/load': '2 2 V' });
    expect(changed(none)).toEqual([]);
  });
  test('settings are held against stock wherever it stands, setups against the first', () => {
    const set = facts({ 'a/set/scene/power/board/load': '200 200 201 W', 'a/stock/scene/power/board/load': '300 300 301 W' }, { kinds: { stock: 'stock', set: 'power-limit' } });
    expect(changed(set, 'setting').map((o) => o.fact.subject)).toEqual(['a/set/scene/power/board/load']);
    expect(changed(set, 'setup')).toEqual([]);
  });
});

describe('what limits', () => {
  test.each<[string, string, RegExp | undefined]>([
    ['power/board', '298 298 298 W|300 W!', /^Board power reaches 99.% of its limit \(Alder, Stock\)$/],
    ['power/board', '310 310 310 W|300 W!', /goes over its limit, to 103.% of it/],
    ['power/board', '250 250 250 W|300 W!', undefined],
    ['temperature/core', '97 97 97 °C|105 °C!', /^Core temperature comes within 8.K of its limit/],
    ['temperature/core', '80 80 80 °C|105 °C!', undefined],
  ])('%s of %s', (what, both, why) => {
    const [value, limit] = both.split('|') as [string, string];
    const found = limits(facts({ [`a/stock/scene/${what}/load`]: value, [`/stock//${what}/limit`]: limit }));
    if (why) expect(found[0]!.why).toMatch(why);
    else expect(found).toEqual([]);
  });
});

describe('what surprised', () => {
  const of = (readings: Record<string, string>, kind: Kinds[string]) => surprises(facts(readings, { kinds: { stock: 'stock', set: kind } })).map((o) => o.why);
  test('a power limit that makes it warmer', () => {
    expect(of({ 'a/stock/scene/temperature/core/load': '60 60 61 °C', 'a/set/scene/temperature/core/load': '66 66 67 °C' }, 'power-limit')).toEqual(['Core temperature rises between Stock and Set, against what such a setting is for']);
  });
  test('an overclock without one frame more', () => {
    expect(of({ 'a/stock/scene/frame_rate/average/load': '99 101 100 fps', 'a/set/scene/frame_rate/average/load': '100 101 99 fps' }, 'overclock')[0]).toMatch(/shows no difference that the runs can tell/);
  });
  test('an undervolt that does what it is for is none', () => {
    expect(of({ 'a/stock/scene/power/board/load': '300 300 301 W', 'a/set/scene/power/board/load': '250 250 251 W' }, 'undervolt')).toEqual([]);
  });
  test('a cheaper product that does better; the dearer that does better is none', () => {
    const readings = { 'a/stock/scene/frame_rate/average/load': '100 100 101 fps', 'b/stock/scene/frame_rate/average/load': '90 90 91 fps' };
    expect(surprises(facts(readings, { prices: { a: '$199', b: '$299' } })).map((o) => o.why)).toEqual([expect.stringMatching(/^Alder costs less than Birch \(\$199 and \$299\) and does better: 100.fps against 90.fps$/)]);
    expect(surprises(facts(readings, { prices: { a: '$299', b: '$199' } }))).toEqual([]);
  });
});

describe('the order of pictures', () => {
  const picture = (name: string, ...ids: string[]): { name: string; title: string; facts: string[]; closes?: boolean } => ({ name, title: name, facts: ids });
  const order = (planned: ReturnType<typeof picture>[], said: [string, number][], headings: [string, number][] = []) => inStoryOrder(planned, new Map(said), new Map(headings)).map((p) => p.name);
  test('is that of the plan where nothing is said', () => {
    expect(order([picture('b', 'y'), picture('a', 'x')], [])).toEqual(['b', 'a']);
  });
  test('is that of the first mention; what is said nowhere stays behind what it was planned after', () => {
    expect(order([picture('title'), picture('late', 'z', 'w'), picture('with-late'), picture('early', 'x', 'z')], [['x', 10], ['z', 30], ['w', 40]])).toEqual(['title', 'early', 'late', 'with-late']);
  });
  test('what closes comes last, whatever is said of it', () => {
    expect(order([{ ...picture('end', 'x'), closes: true }, picture('late', 'z'), picture('early', 'x')], [['x', 10], ['z', 30]])).toEqual(['early', 'late', 'end']);
  });
  test('a title that is a heading stands where the heading does', () => {
    expect(order([picture('early', 'x'), picture('The case'), picture('late', 'z')], [['x', 10], ['z', 30]], [[plainHeading('## Chapter 2: The case'), 20]])).toEqual(['early', 'The case', 'late']);
    expect(['# One card', '## Chapter 3: One card', '2. One card', 'One CARD'].map(plainHeading)).toEqual(Array.from({ length: 4 }, () => 'one card'));
  });
});
