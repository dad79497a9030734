// What was tested for one and not for the other.
import { isIdle } from '../facts/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import { grouped, isRoom, measured, quantityOf } from './measured.js';
import { count, listed, nameOf, tell } from './words.js';

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

/** Quantities that at least two comparable tests have, and more have than have not. What no test of a setting has was left out on purpose. */
function missingQuantities(tests: Tests, { facts }: Context): Report[] {
  const holders = new Map<string, Set<string>>();
  for (const [test, all] of tests) for (const { at } of all) holders.set(cell(at), (holders.get(cell(at)) ?? new Set()).add(test));
  const holes = [...tests].flatMap(([test, all]) => [...holders].flatMap(([what, have]) => {
    const [workload] = what.split('|');
    const comparable = [...tests].filter(([t, others]) => t.endsWith('/') === test.endsWith('/') && (workload === '' || others.some(({ at }) => at.workload === workload))).map(([t]) => t);
    const alike = comparable.filter((t) => have.has(t));
    const [setup, setting] = test.split('/') as [string, string];
    if (have.has(test) || !comparable.includes(test) || alike.length < 2 || alike.length <= comparable.length / 2) return [];
    if (setting && !alike.some((t) => t.endsWith(`/${setting}`))) return [];
    const nowhere = ![...have].some((t) => t.startsWith(`${setup}/`));
    return [{ subject: nowhere ? setup : test, setup, setting: nowhere ? '' : setting, what, alike, place: all[0]!.readings[0]!.place }];
  }));
  return [...grouped(holes, (h) => h.subject).values()].map((all) => {
    const { subject, setup, setting, what, alike, place } = all[0]!;
    const names = [...new Set(all.map((h) => lowerFirst(tell(facts.about, h.what.split('|')[1]!))))];
    const beside = tests.get(alike[0]!)!.find(({ at }) => cell(at) === what)!;
    return {
      place, subject,
      message: `${[nameOf(facts.about, 'setup', setup), setting && nameOf(facts.about, 'setting', setting)].filter(Boolean).join(', ')} has no ${listed(names, 'or')}; ${count(alike.length, 'other test')} ${alike.length === 1 ? 'has' : 'have'} it`,
      related: [{ place: beside.readings[0]!.place, label: tell(facts.about, beside.key) }],
    };
  });
}

function lowerFirst(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

/** Idle is the same whatever is run afterwards. */
function cell(at: ReturnType<typeof measured>[number]['at']): string {
  return `${isIdle(at.phase) ? '' : at.workload}|${quantityOf(at)}`;
}
