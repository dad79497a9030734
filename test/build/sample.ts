// Two small invented episodes, the second quoting the first, and builds of them into folders of the test's own.
import * as fs from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, check, type Options } from '../../pipeline/build.js';
import { place, scratch, treeOf } from '../files/scratch.js';

export const bench = `title: Bench notes
date: 2026-01-05
room: 21 °C
setups: {bench: {name: Open bench, spoken: [the bench]}}
settings: {stock: {name: Stock, kind: stock}, capped: {name: Power cap, kind: power-limit}}
workloads: {loop: {name: Test loop, spoken: [the loop]}}
measures:
  temperature: {better: lower, unit: °C}
  power: {better: lower, unit: W}
parts: {core: Core, board: Board}
phases: {idle: {spoken: [at idle]}, load: {spoken: [under load]}}
constants: {power/board/limit: 250 W}
readings:
  - for: {setup: bench, setting: stock, workload: loop}
    temperature/core: {idle: 38 38 39 °C, load: 67 67 68 °C}
    power/board: {load: 247 248 248 W}
  - for: {setup: bench, setting: capped, workload: loop}
    temperature/core: {idle: 38 39 38 °C, load: 59 60 60 °C}
    power/board: {load: 199 200 200 W}
stated:
  - {rise: [bench/stock/loop/temperature/core/load, bench/stock//temperature/core/idle], is: 29 K, where: thumbnail}
pictures:
  - {chart: bars, name: core, measure: temperature, part: core, phase: load}
  - {chart: bars, name: board, measure: power, part: board, phase: load}
`;

/** With one picture: enough where it does not matter what is drawn, and drawn in half the time. */
export const one = bench.replace(/ {2}- \{chart: bars, name: board.*\n/, '');

export const quoting = `title: Follow-up
setups: {before: Before, after: After}
settings: {stock: {name: Stock, kind: stock}}
workloads: {loop: Test loop}
measures: {temperature: {better: lower, unit: °C}}
parts: {core: Core}
phases: {load: Load}
quotes:
  - {from: bench, fact: "mean:bench/stock/loop/temperature/core/load", as: before/stock/loop/temperature/core/load, was: 67 °C}
readings:
  - {for: {setup: after, setting: stock, workload: loop}, temperature/core: {load: 61 62 61 °C}}
pictures:
  - {chart: bars, name: core, measure: temperature, part: core, phase: load}
`;

export interface Sample {
  folder: string;
  data: string;
  out: string;
  options: Options;
  write(name: string, text: string): void;
  build(more?: Partial<Options>): ReturnType<typeof build>;
  check(more?: Partial<Options>): ReturnType<typeof check>;
  /** Without the manifest, which tells another version of the program from this one. */
  outputs(): Record<string, string>;
}

/** Where the pictures of most tests are drawn once for all of them. */
const shared = fs.mkdtempSync(join(tmpdir(), 'figureproof-cache-'));
process.on('exit', () => fs.rmSync(shared, { recursive: true, force: true }));

const silent = { stage() {}, step() {}, begin() {} };

export function sample(records: Record<string, string> = { bench, quoting }, cache: 'shared' | 'own' = 'shared'): Sample {
  const folder = scratch(Object.fromEntries(Object.entries(records).map(([id, text]) => [`data/${id}/episode.yaml`, text])));
  const [data, out] = [join(folder, 'data'), join(folder, 'out')];
  const options: Options = { data, out, cache: cache === 'own' ? join(folder, '.cache') : shared, only: [], draft: false, failOn: 'error' };
  return {
    folder, data, out, options,
    write: (name, text) => place(data, name, text),
    build: (more = {}) => build({ ...options, ...more }, silent),
    check: (more = {}) => check({ ...options, ...more }, silent),
    outputs: () => Object.fromEntries(Object.entries(fs.existsSync(out) ? treeOf(out) : {}).filter(([name]) => name !== '.manifest.json')),
  };
}

/** A reading of the stock setting that contradicts what is stated. */
export const contradicted = bench.replace('load: 67 67 68 °C', 'load: 68 68 69 °C');
