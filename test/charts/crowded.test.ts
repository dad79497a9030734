// Whatever a record holds, on every stage: what is drawn is well set, and what has no room is told and not squeezed.
import { describe, expect, test } from 'vitest';
import { type ChartRequest, inParts, prepareChart, rowsOf } from '../../pipeline/charts/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { stages } from '../theme/stages.js';
import { expectWellSet } from './boxes.js';
import { place, sample } from './sample.js';

interface Situation {
  setups: string[];
  settings?: string[];
  /** Idle and load of a setup and setting, by their places in the lists. */
  values: (setup: number, setting: number) => [idle: string, load: string];
  title?: string;
}

const names = ['Alder', 'Birch', 'Cedar', 'Downy oak', 'Elder', 'Fir', 'Gorse'];
const long = ['Larkfield 70 with the long cooler', 'Copse 24 with its front closed', 'Fennel 850, the second sample', 'Harrow and Marrow, side by side', 'Quillon without its shroud', 'Pennick S on three screws'];

const situations: Record<string, Situation> = {
  'six rows': { setups: names.slice(0, 6), values: (i) => [`${30 + i} ${31 + i} W`, `${60 + i} ${61 + i} ${62 + i} W`] },
  'seven rows': { setups: names, values: (i) => [`${30 + i} W`, `${60 + i} ${61 + i} W`] },
  'six long names': { setups: long, values: (i) => [`${30 + i} W`, `${60 + i} ${61 + i} W`] },
  'tiny values': { setups: names.slice(0, 4), values: (i) => [`0.000${i + 1} W`, `0.00${i + 12} W`] },
  'huge values': { setups: names.slice(0, 4), values: (i) => [`${i + 1}2345678.5 W`, `${i + 3}23456789.5 W`] },
  'values below zero': { setups: names.slice(0, 4), values: (i) => [`-${30 + i} W`, `${i % 2 ? '-' : ''}${12 + i} W`] },
  'all alike': { setups: names.slice(0, 5), values: () => ['30 W', '60 60 60 W'] },
  'far apart': { setups: names.slice(0, 3), values: (i) => ['0.5 W', `${10 ** (i * 3)} W`] },
  'a title of two lines': { setups: names.slice(0, 3), values: (i) => [`${30 + i} W`, `${60 + i} W`], title: 'What three boxes of wood and one of steel do to the power of the same board in summer' },
  'two settings of six': { setups: names.slice(0, 6), settings: ['Stock', 'Power limit 75 %'], values: (i, j) => [`${30 + i} W`, `${60 + 3 * i - 9 * j} ${61 + 3 * i - 9 * j} W`] },
  'three settings of five long names': { setups: long.slice(0, 5), settings: ['Stock', 'Power limit 75 %', 'Undervolt by 50 mV'], values: (i, j) => [`${30 + i} W`, `${60 + 3 * i - 9 * j} W`] },
  'other letters': { setups: ['Δοκιμή Ω', 'Журавль', 'Žluťoučký kůň', 'Ærø ½'], values: (i) => [`${30 + i} W`, `${60 + i} W`] },
};

function factsOf({ setups, settings = ['Stock'], values }: Situation): Facts {
  return new Facts(sample({
    setups: Object.fromEntries(setups.map((n, i) => [`s${i}`, n])), settings: Object.fromEntries(settings.map((n, j) => [`t${j}`, n])), workloads: { scene: 'Scene' },
    measures: { power: ['Power', 'lower'], noise: ['Noise', 'lower'] }, parts: { board: 'Board' },
    readings: Object.fromEntries([
      ...setups.flatMap((_s, i) => settings.flatMap((_t, j) => [
        [`s${i}/t${j}/scene/power/board/idle`, values(i, j)[0]], [`s${i}/t${j}/scene/power/board/load`, values(i, j)[1]], [`s${i}/t${j}/scene/noise/board/load`, `${30 + 2 * i + j} ${31 + 2 * i + j} dB(A)`],
      ])),
      ['/t0//power/board/limit', '75 W!'],
    ]),
  }));
}

const kinds: Omit<ChartRequest, 'place' | 'name'>[] = [
  { kind: 'ranked', measure: 'power' }, { kind: 'bars', measure: 'power' }, { kind: 'bars-idle-load', measure: 'power' }, { kind: 'dots', measure: 'power' },
  { kind: 'share-of-limit', measure: 'power' }, { kind: 'tradeoff', measure: 'power', text: 'noise/board' },
];

describe.each(Object.entries(situations))('%s', (_name, situation) => {
  const facts = factsOf(situation);
  test.each(kinds.flatMap((k) => stages.map((s) => [k.kind, s.id, k, s] as const)))('%s, %s', async (_kind, _id, kind, stage) => {
    const request: ChartRequest = { ...kind, name: 'crowded', place, ...(situation.title && { title: situation.title }) };
    const rows = rowsOf(request, facts);
    for (let count = 1; ; count++) {
      const made = inParts(request, rows, count).map((r) => prepareChart(r, facts, stage));
      const findings = made.flatMap((m) => m.findings);
      if (count < rows && findings.some((f) => f.code === 'too-many-rows')) continue;
      for (const f of findings) {
        expect(['label-too-long', 'too-many-rows', 'picture-empty', 'picture-incomplete']).toContain(f.code);
        expect(f.message).toMatch(/\w{3,} .*\w/);
      }
      for (const { value } of made) if (value) expectWellSet((await value.draw()).svg, stage);
      return;
    }
  });
});

test('one row has room in every situation with names of ordinary length', () => {
  for (const [name, situation] of Object.entries(situations)) {
    if (situation.setups === long || /long|far|other/.test(name)) continue;
    const facts = factsOf(situation);
    for (const stage of stages) {
      const request: ChartRequest = { kind: 'ranked', measure: 'power', settings: ['t0'], name: 'crowded', place };
      expect(inParts(request, situation.setups.length, situation.setups.length).flatMap((r) => prepareChart(r, facts, stage).findings), `${name}, ${stage.id}`).toEqual([]);
    }
  }
});

describe('what the typeface has no shape for is refused on every stage, with the letters named', () => {
  test.each(['שולחן פתוח', '試験台', 'مقعد'])('%s', (name) => {
    const facts = factsOf({ setups: [name, 'Birch'], values: () => ['30 W', '60 W'] });
    for (const stage of stages) {
      const { value, findings } = prepareChart({ kind: 'ranked', measure: 'power', name: 'crowded', place }, facts, stage);
      expect(value).toBeUndefined();
      expect(findings.map((f) => f.code)).toContain('missing-glyph');
      expect(findings[0]!.message).toMatch(/^pictures cannot show .*U\+0?\w{4}/i);
    }
  });
});
