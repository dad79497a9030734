// What a watt gives, as a table of its own: warming for each watt, frames for each watt, heat in the coolant.
import { type Fact, type Facts, heatBalances, inOrderOfNames, isFact, isIdle, isMeasured, kelvinPerWatt, type Key, type KeyParts, quantityName, roomParts, splitKey } from '../facts/index.js';
import { common, rowFields } from './grid.js';
import { namesOf } from './places-of.js';
import type { ResultTable } from './results.js';

interface Test {
  parts: KeyParts;
  keys: { key: Key; parts: KeyParts; value: Fact }[];
}

interface Column {
  name: string;
  of(test: Test): Fact | undefined;
}

/** Undefined where no test has anything to show. */
export function efficiencyTable(facts: Facts): { table: ResultTable; shown: Fact[] } | undefined {
  const tests = testsOf(facts);
  const filled = columnsOf(facts, tests).map((column) => ({ column, cells: tests.map((t) => column.of(t)) })).filter(({ cells }) => cells.some((f) => f !== undefined));
  const used = tests.map((test, i) => ({ test, cells: filled.map(({ cells }) => cells[i]) })).filter(({ cells }) => cells.some((f) => f !== undefined));
  if (used.length === 0) return undefined;
  const everywhere = common(facts);
  const fields = rowFields.filter((f) => !everywhere.has(f));
  const table: ResultTable = {
    id: 'results-per-watt', caption: 'What a watt gives', unit: '', note: 'computed from the means; how, stands under the derivations',
    groups: filled.map(({ column }) => ({ name: column.name, span: 1 })),
    columns: filled.map(() => ({ name: 'Value', first: true })),
    rows: used.map(({ test, cells }, r) => {
      const [name = 'All', ...rest] = namesOf(facts, test.parts, fields);
      return {
        name, detail: rest.join(', '), opens: r > 0 && test.parts.setup !== used[r - 1]!.test.parts.setup && fields.includes('setup') && fields.length > 1,
        cells: cells.map((f) => (f ? { value: f.shown, spread: '', runs: '', second: f.second?.shown ?? '', best: false } : null)),
      };
    }),
  };
  return { table, shown: used.flatMap(({ cells }) => cells.filter((f) => f !== undefined)) };
}

/** Each setup, setting and workload with what was read of it under load. */
function testsOf(facts: Facts): Test[] {
  const tests = new Map<string, Test>();
  for (const key of facts.keys().sort(inOrderOfNames(facts.about))) {
    const parts = splitKey(key);
    const value = isMeasured(facts, key) ? facts.value(key) : undefined;
    if (!parts || !isFact(value) || isIdle(parts.phase)) continue;
    const id = rowFields.map((f) => parts[f]).join('/');
    const test = tests.get(id) ?? { parts, keys: [] };
    tests.set(id, test);
    test.keys.push({ key, parts, value });
  }
  return [...tests.values()];
}

function columnsOf(facts: Facts, tests: readonly Test[]): Column[] {
  const all = tests.flatMap((t) => t.keys);
  const first = (fits: (k: Test['keys'][number]) => boolean) => all.find(fits)?.parts;
  const hot = first(({ parts }) => parts.measure === 'temperature' && !roomParts.includes(parts.part));
  // What draws by itself has a column of its own; else the first temperature stands for the thing tested.
  const heated = new Map(all.filter(({ key, parts }) => (parts.measure === hot?.measure && parts.part === hot.part) || kelvinPerWatt(facts, key)?.own).map(({ parts }) => [`${parts.measure}/${parts.part}`, parts]));
  const rate = first(({ value }) => value.unit.dimension === 'frame-rate');
  const heats = new Map(heatBalances(facts).map((b) => [testId(b.flow.subject), b]));
  const keyOf = (test: Test, at: KeyParts, phase: string | undefined) => test.keys.find((k) => k.parts.measure === at.measure && k.parts.part === at.part && (phase === undefined || k.parts.phase === phase))?.key;
  const kelvins = (test: Test, at: KeyParts): Fact | undefined => {
    const key = keyOf(test, at, at.phase);
    return key === undefined ? undefined : kelvinPerWatt(facts, key)?.fact;
  };
  const perWatt = (test: Test, at: KeyParts): Fact | undefined => {
    const power = powerOf(facts, test);
    const key = power && keyOf(test, at, power.parts.phase);
    const fact = key === undefined || !power ? undefined : facts.derive('per_watt', [key, power.key]);
    return isFact(fact) ? fact : undefined;
  };
  return [
    ...[...heated.values()].map((at) => ({ name: `${quantityName(facts.about, at.measure, at.part)} over room per watt`, of: (t: Test) => kelvins(t, at) })),
    ...(rate ? [{ name: `${quantityName(facts.about, rate.measure, rate.part)} per watt`, of: (t: Test) => perWatt(t, rate) }] : []),
    { name: 'Heat in the coolant', of: (t) => heats.get(testId(t.keys[0]!.key))?.heat },
    { name: 'Heat, share of the power', of: (t) => heats.get(testId(t.keys[0]!.key))?.share },
  ];
}

/** The one power of a test that has a limit: that of the thing tested, and not of a pump or a fan beside it. */
function powerOf(facts: Facts, test: Test): Test['keys'][number] | undefined {
  const limited = test.keys.filter(({ key, value }) => value.unit.dimension === 'power' && facts.constantFor(key, 'limit') !== undefined);
  return limited.length === 1 ? limited[0] : undefined;
}

function testId(key: Key): string {
  return key.split('/').slice(0, 3).join('/');
}
