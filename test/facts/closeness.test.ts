// When two figures are too close to be told apart, for all who rank, pick out, mark or say so.
import { expect, test } from 'vitest';
import { bestOf, closeNotes, type Fact, Facts, isFact, tooClose } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { bareEpisode, readReadings } from '../../pipeline/records/index.js';
import { readQuantity, unit } from '../../pipeline/quantities/index.js';

function two(a: string, b: string, matters?: string): { facts: Facts; a: ReturnType<Facts['value']>; b: ReturnType<Facts['value']> } {
  const rows = [['a', a], ['b', b]].flatMap(([setup, runs]) => runs!.split(' ').map((v, i) => `${setup},,,noise,fan,load,${i + 1},${v},dB(A)`));
  const readings = readReadings(new Source('r.csv', `setup,setting,workload,measure,part,phase,run,value,unit\n${rows.join('\n')}\n`)).value!;
  const episode = bareEpisode(readings, [], readings[0]!.place);
  const least = matters ? readQuantity(matters, unit('dB(A)')) : undefined;
  episode.measures.set('noise', { ...episode.measures.get('noise')!, better: 'lower', ...(least && 'quantity' in least && { matters: least.quantity }) });
  const facts = new Facts(episode);
  return { facts, a: facts.value('a///noise/fan/load'), b: facts.value('b///noise/fan/load') };
}

test.each([
  ['equal means', '36.0 36.2', '36.1 36.1', undefined, 'level'],
  ['runs that overlap', '35.9 36.9 36.1', '36.2 37.4 36.5', undefined, 'spread'],
  // Two runs each, 0.5 apart: t for two degrees of freedom is 4.30 (JCGM 100 Table G.2), and 4.30 · √(0.25 + 0.25) is 3.0.
  ['runs that scatter too much for so few', '36.0 37.0', '38.0 39.0', undefined, 'scatter'],
  ['single runs', '36.0', '49.0', undefined, 'single'],
  // Apart by 0.5, known to about 0.3 at 95 %: a difference, and within a decibel all of it.
  ['less than matters', '35.9 35.9 35.8', '36.3 36.3 36.5', '1 dB(A)', 'matters'],
  ['the same, where the house says what matters', '35.9 35.9 35.8', '36.3 36.3 36.5', undefined, 'matters'],
  ['the same, where less matters', '35.9 35.9 35.8', '36.3 36.3 36.5', '0.2 dB(A)', undefined],
  ['more than matters', '35.9 35.9 35.8', '38.3 38.3 38.6', '1 dB(A)', undefined],
  // Apart by 0.9 and known to about 0.3: told apart, and by less than the record says matters; by the house's word alone it stands.
  ['told apart, and less than the record says matters', '35.7 35.9 35.8', '36.6 36.8 36.7', '1 dB(A)', 'matters'],
  ['told apart, and the record says nothing', '35.7 35.9 35.8', '36.6 36.8 36.7', undefined, undefined],
  ['single runs within what the record says matters', '36.0', '36.5', '1 dB(A)', 'matters'],
  ['single runs, and the record says nothing', '36.0', '36.5', undefined, 'single'],
  // Apart by 0.83 and known to 0.9: neither surely different nor surely within a decibel.
  ['less than matters, but not surely', '35.9 36.0 35.2', '36.3 36.6 36.7', '1 dB(A)', 'scatter'],
] as const)('%s', (_what, x, y, matters, close) => {
  const { facts, a, b } = two(x, y, matters);
  expect(isFact(a) && isFact(b) && tooClose(facts, a, b)).toBe(close);
  expect(isFact(a) && isFact(b) && bestOf(facts, 'noise', [a, b])).toEqual(close ? { close } : { fact: a });
});

// IEC 61672-1:2013, acceptance limits at 1 kHz: 0.7 dB for class 1, 1.0 dB for class 2 (recalled).
test.each([[undefined, undefined], [1, undefined], [2, 'matters']] as const)('levels 0.8 dB apart, read by a meter of class %s', (grade, close) => {
  const { facts, a, b } = two('36.00 36.00 36.02', '36.80 36.80 36.82', '0.2 dB(A)');
  const meter = { name: 'meter', measures: ['noise'], place: facts.about.place, ...(grade && { class: grade }) };
  facts.about.instruments.push(meter);
  expect(isFact(a) && isFact(b) && tooClose(facts, a, b)).toBe(close);
});

// Clear ones read 0.1 dB apart at most; the others scatter by 3 dB and lie 1 dB apart: t for two degrees of freedom is 4.30 (JCGM 100 Table G.2).
test.each<[string, Record<string, string>, string[]]>([
  ['all apart', { a: '30.0 30.0 30.1', b: '40.0 40.0 40.1', c: '50.0 50.0 50.1' }, []],
  ['the best two alone', { a: '40.0 46.0 43.0', b: '41.0 47.0 44.0', c: '70.0 70.0 70.1' }, ['the best two overlap run by run']],
  ['a stretch further down', { a: '20.0 20.0 20.1', b: '40.0 46.0 43.0', c: '41.0 47.0 44.0', d: '42.0 48.0 45.0' }, ['places 2 to 4 too close to call']],
  ['two at the end', { a: '20.0 20.0 20.1', b: '30.0 30.0 30.1', c: '60.0 66.0 63.0', d: '61.0 67.0 64.0' }, ['places 3 and 4 too close to call']],
  ['the best of all, more than two', { a: '40.0 46.0 43.0', b: '41.0 47.0 44.0', c: '42.0 48.0 45.0' }, ['places 1 to 3 too close to call']],
  ['equals share a place', { a: '30.0 30.0 30.1', b: '40.0 40.0 40.0', c: '40.0 40.0 40.0' }, []],
  ['single runs below', { a: '30.0 30.0 30.1', b: '40.0 40.0 40.1', c: '50.0', d: '51.0' }, []],
])('below a ranking: %s', (_what, runs, notes) => {
  const rows = Object.entries(runs).flatMap(([setup, all]) => all.split(' ').map((v, i) => `${setup},,,noise,fan,load,${i + 1},${v},dB(A)`));
  const readings = readReadings(new Source('r.csv', `setup,setting,workload,measure,part,phase,run,value,unit\n${rows.join('\n')}\n`)).value!;
  const episode = bareEpisode(readings, [], readings[0]!.place);
  const facts = new Facts(episode);
  const sorted = Object.keys(runs).map((s) => facts.value(`${s}///noise/fan/load`)).filter(isFact).sort((x, y) => x.value.compare(y.value));
  const place = (f: Fact): string => String(1 + sorted.filter((g) => g.value.compare(f.value) < 0).length);
  expect(closeNotes(facts, sorted, place)).toEqual(notes);
});
