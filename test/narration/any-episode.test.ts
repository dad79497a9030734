// Whatever a record holds, each sentence is whole, and each number in it is a number of a fact that it names.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isFact } from '../../pipeline/facts/index.js';
import { narrate } from '../../pipeline/narration/index.js';
import { Exact, inWords, units } from '../../pipeline/quantities/index.js';
import { factsOf } from '../facts/episode.js';
import { arrangement, mapOf, measure, named, product, setting } from './episodes.js';

const measures = [
  { id: 'temperature', part: 'core', unit: '°C', decimals: 0 }, { id: 'temperature', part: 'memory', unit: '°C', decimals: 1 },
  { id: 'power', part: 'board', unit: 'W', decimals: 1 }, { id: 'frame_rate', part: 'average', unit: 'fps', decimals: 1 },
  { id: 'noise', part: 'card', unit: 'dB(A)', decimals: 1 }, { id: 'duty', part: 'fan', unit: '%', decimals: 0 },
  { id: 'voltage', part: 'core', unit: 'V', decimals: 3 }, { id: 'flow', part: 'loop', unit: 'L/min', decimals: 2 },
] as const;
const setups = ['bench', 'box', 'cabinet', 'drawer'];
const settings = ['stock', 'undervolt', 'overclock'];

const value = (decimals: number) => fc.integer({ min: -200, max: 4000 }).map((n) => Exact.of(n, 10 ** decimals).toFixed(decimals));
const episode = fc.record({
  setups: fc.integer({ min: 1, max: 4 }), settings: fc.integer({ min: 1, max: 3 }), runs: fc.integer({ min: 1, max: 3 }),
  chosen: fc.uniqueArray(fc.constantFrom(...measures), { minLength: 1, maxLength: 4 }), idle: fc.boolean(), room: fc.boolean(), limit: fc.boolean(), target: fc.boolean(),
  kinds: fc.boolean(), better: fc.constantFrom('lower' as const, 'higher' as const, 'neither' as const),
}).chain((shape) => {
  const keys = setups.slice(0, shape.setups).flatMap((s) => settings.slice(0, shape.settings).flatMap((t) => shape.chosen.flatMap((m) => [
    { key: `${s}/${t}/scene/${m.id}/${m.part}/load`, m, n: shape.runs }, ...(shape.idle ? [{ key: `${s}/${t}//${m.id}/${m.part}/idle`, m, n: shape.runs }] : []),
  ])));
  const extra = [
    ...(shape.room ? [{ key: 'bench/stock/scene/temperature/room/load', m: measures[1], n: shape.runs }] : []),
    ...(shape.limit ? shape.chosen.map((m) => ({ key: `///${m.id}/${m.part}/limit`, m, n: 0 })) : []),
    ...(shape.target ? shape.chosen.map((m) => ({ key: `/stock//${m.id}/${m.part}/target`, m, n: 0 })) : []),
  ];
  const all = [...keys, ...extra];
  return fc.tuple(...all.map(({ m, n }) => fc.array(value(m.decimals), { minLength: Math.max(1, n), maxLength: Math.max(1, n) }))).map((values) => ({
    shape, text: all.map(({ key, m, n }, i) => `${key}: ${n === 0 ? '= ' : ''}${values[i]!.join(' ')} ${m.unit}`).join('\n'),
  }));
});

const factsFor = ({ shape, text }: { shape: { kinds: boolean; better: 'lower' | 'higher' | 'neither' }; text: string }) => factsOf(text, {
  setups: mapOf(...setups.map((id) => (shape.kinds ? product(id, `the ${id}`) : arrangement(id, `the ${id}`, `in the ${id}`)))),
  settings: mapOf(setting('stock', 'stock', 'stock', 'at stock'), setting('undervolt', 'undervolt', 'the undervolt'), setting('overclock', 'overclock', 'the overclock')),
  measures: mapOf(...measures.map((m) => measure(m.id, shape.better))),
  parts: mapOf(...[...new Set(measures.map((m) => m.part as string)), 'room'].map((id) => named(id, `the ${id}`))),
});

/** Singular and plural unit words that differ. */
const words = new Map([...units.values()].filter((u) => u.one && u.one !== u.many).map((u) => [u.many, u.one]));
words.set('degrees', 'degree');
const one = new RegExp(`(?<![\\w.-]|(?:hundred|thousand|and|minus) |point (?:\\w+ )*)(?:(?:minus )?one|(?:minus )?1) (${[...words.keys()].join('|')})\\b`);
const many = new RegExp(`(\\S+) (${[...words.values()].filter((w) => w !== 'second' && w !== 'point' && w !== 'frame').join('|')})(?= |\\.|,)`, 'g');

test('whole sentences in either form', () => {
  fc.assert(fc.property(episode, fc.constantFrom('words' as const, 'digits' as const), (e, form) => {
    for (const { text, section, seconds } of narrate(factsFor(e), { form })) {
      expect(text).toMatch(/^\p{Lu}.*[^.]\.$/u);
      expect(text).not.toMatch(/ {2}|\s[,.:;]|[,:;][,.:;]|undefined|null|NaN|\[object|\bat at\b|\bwith at\b/);
      expect(text, 'one of a unit is singular').not.toMatch(one);
      for (const [, number, word] of text.matchAll(many)) if (!/^per$/.test(number!)) expect(`${number} ${word}`, text).toMatch(/^(one|1|a|per) /);
      expect(section).toMatch(/^\p{Lu}/u);
      expect(seconds).toBeGreaterThan(0);
      expect(text.match(/“/g)?.length ?? 0).toBe(text.match(/”/g)?.length ?? 0);
    }
  }), { numRuns: 60 });
});

test('every number said is a number of a fact named, no percent is of a temperature, and no digit stands in words', () => {
  fc.assert(fc.property(episode, (e) => {
    const facts = factsFor(e);
    for (const s of narrate(facts, { form: 'digits' })) {
      const sizes = s.facts.map((id) => facts.get(id)).filter(isFact).map((f) => f.value.abs());
      for (const [number] of s.text.matchAll(/\d[\d,]*(?:\.\d+)?/g)) {
        const decimals = number.split('.')[1]?.length ?? 0;
        const value = Exact.parse(number.replaceAll(',', ''))!;
        expect(sizes.some((x) => x.round(decimals).equals(value)), `${number} in: ${s.text}`).toBe(true);
      }
      for (const id of s.facts) if (/^(percent_of|percent_change):/.test(id)) expect(id).not.toContain('/temperature/');
    }
    for (const s of narrate(facts, { form: 'words' })) expect(s.text).not.toMatch(/\d/);
  }), { numRuns: 60 });
});

test('both forms say the same, and a subtraction inside a sentence comes out', () => {
  fc.assert(fc.property(episode, (e) => {
    const facts = factsFor(e);
    const spelled = narrate(facts, { form: 'words' });
    const digits = narrate(facts, { form: 'digits' });
    expect(digits.map((s) => s.facts)).toEqual(spelled.map((s) => s.facts));
    const put = (t: string) => t.replace(/(minus )?(\d+(?:,\d{3})*(?:\.\d+)?)/g, (_w, minus: string | undefined, n: string) => inWords(`${minus ? '-' : ''}${n.replaceAll(',', '')}`));
    expect(digits.map((s) => put(s.text))).toEqual(spelled.map((s) => s.text));
    for (const { text } of digits) {
      const m = /(rose|fell) ([\d,.]+?) .*from (minus )?([\d,.]+) at idle to (minus )?([\d,.]+) under/.exec(text);
      if (!m) continue;
      const n = (t: string, minus?: string) => Number(t.replaceAll(',', '')) * (minus ? -1 : 1);
      const change = Math.abs(n(m[6]!, m[5]) - n(m[4]!, m[3]));
      const places = m[2]!.split('.')[1]?.length ?? 0;
      expect(Exact.fromNumber(Number(change.toFixed(6))).toFixed(places), text).toBe(Exact.fromNumber(n(m[2]!)).toFixed(places));
    }
  }), { numRuns: 40 });
});
