// What was tested for one and not for the other.
import { splitKey } from '../records/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import { grouped, isRoom, measured, quantityOf } from './measured.js';
import { listed, nameOf, tell } from './words.js';

export const matrixHole: Check = {
  name: 'matrix-hole',
  says: 'A combination of setup and setting was not tested, or a quantity was not read in one that was.',
  why: 'A missing cell is easily filled from memory in a sentence or a chart. Where most of the matrix is filled, the holes are told.',
  severity: 'warning',
  thresholds: ['matrix-filled'],
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}, case: {name: Closed case}}
    settings: {stock: {name: Stock, kind: stock}, low: {name: Low limit}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, setting: stock, workload: scene}, power/board: {load: 248 W}}
      - {for: {setup: bench, setting: low, workload: scene}, power/board: {load: 200 W}}
      - {for: {setup: case, setting: stock, workload: scene}, power/board: {load: 248 W}}
      - {for: {setup: case, setting: low, workload: scene}, power/board: {load: 200 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups:
      bench: {name: Open bench}
      case: {name: Closed case} # expect
    settings: {stock: {name: Stock, kind: stock}, low: {name: Low limit}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, setting: stock, workload: scene}, power/board: {load: 248 W}, noise/card: {load: "37 dB(A)"}}
      - {for: {setup: bench, setting: low, workload: scene}, power/board: {load: 200 W}, noise/card: {load: "33 dB(A)"}}
      - {for: {setup: case, setting: stock, workload: scene}, power/board: {load: 248 W}} # expect
  `) },
  run(context) {
    const all = measured(context.facts).filter(({ at }) => !context.facts.holders().includes(at.setup) && !isRoom(at));
    const tests = grouped(all, ({ at }) => `${at.setup}/${at.setting}`);
    return [...emptyCells(tests, context), ...missingQuantities(tests, context)];
  },
};

type Tests = Map<string, ReturnType<typeof measured>>;

function emptyCells(tests: Tests, { episode, facts, limits }: Context): Report[] {
  const pairs = [...tests.keys()].map((t) => t.split('/') as [string, string]).filter(([setup, setting]) => setup && setting);
  const setups = [...new Set(pairs.map(([s]) => s))];
  const settings = [...new Set(pairs.map(([, s]) => s))];
  const filled = pairs.length / (setups.length * settings.length);
  if (setups.length < 2 || settings.length < 2 || filled < limits.share('matrix-filled').toNumber()) return [];
  return setups.flatMap((setup) => {
    const missing = settings.filter((setting) => !tests.has(`${setup}/${setting}`));
    if (missing.length === 0) return [];
    const place = episode.setups.get(setup)?.place ?? tests.get(`${setup}/${settings.find((s) => tests.has(`${setup}/${s}`))}`)![0]!.readings[0]!.place;
    return [{
      place, subject: missing.length === 1 ? `${setup}/${missing[0]}` : setup,
      message: `${nameOf(facts.about, 'setup', setup)} was not tested at ${listed(missing.map((s) => nameOf(facts.about, 'setting', s)))}; most other combinations were`,
    }];
  });
}

/** Quantities that at least two other tests of the same workload have, and more have than have not. */
function missingQuantities(tests: Tests, { facts }: Context): Report[] {
  if (tests.size < 2) return [];
  const holders = new Map<string, Set<string>>();
  for (const [test, all] of tests) {
    for (const { at } of all) {
      const what = `${at.workload}|${quantityOf(at)}`;
      holders.set(what, (holders.get(what) ?? new Set()).add(test));
    }
  }
  return [...tests].flatMap(([test, all]) => {
    const missing = [...holders].filter(([what, have]) => {
      const [workload] = what.split('|');
      const comparable = [...tests].filter(([, others]) => workload === '' || others.some(({ at }) => at.workload === workload)).map(([t]) => t);
      return !have.has(test) && comparable.includes(test) && have.size >= 2 && have.size > comparable.length / 2;
    });
    if (missing.length === 0) return [];
    const [setup, setting] = test.split('/') as [string, string];
    const names = [...new Set(missing.map(([what]) => tell(facts.about, what.split('|')[1]!)))].map((n) => n.toLowerCase());
    const other = [...missing[0]![1]][0]!;
    const beside = tests.get(other)!.find(({ at }) => `${at.workload}|${quantityOf(at)}` === missing[0]![0]);
    return [{
      place: all[0]!.readings[0]!.place, subject: test,
      message: `${[nameOf(facts.about, 'setup', setup), setting && nameOf(facts.about, 'setting', setting)].filter(Boolean).join(', ')} has no ${listed(names, 'or')}; ${missing[0]![1].size} of ${tests.size} tests have it`,
      ...(beside && splitKey(beside.key) && { related: [{ place: beside.readings[0]!.place, label: tell(facts.about, beside.key) }] }),
    }];
  });
}
