// The derivation of a fact, down to the file and line of every reading and the rows of every log.
import { Exact, unit } from '../quantities/index.js';
import type { Reading } from '../records/index.js';
import type { Fact } from './fact.js';
import { type Facts, isFact } from './facts.js';
import { soundKinds } from './operations/sound.js';
import { roundingRules } from './rounding.js';
import { type BudgetTable, budgetTable, expandedShown, type OutcomeTold, printBudget, tellOutcome } from './budget-table.js';
import { figure } from './figure.js';
import { loggedInWords } from './logged.js';
import { suggestIds } from './suggest.js';

export interface DerivedReading {
  run: string;
  shown: string;
  file: string;
  line: number;
  /** The rows of that file that it was averaged from, where it is a log. */
  log?: { firstLine: number; lastLine: number; samples: number; how?: string };
  /** Why it was set aside. */
  aside?: string;
}

export interface Derivation {
  id: string;
  shown: string;
  spoken: string;
  formula: string;
  /** Exact where the decimal ends, else 15 significant digits. */
  value: string;
  /** Whether that decimal is the whole value. */
  ends: boolean;
  unit: string;
  rounding: string;
  spread?: string;
  uncertainty?: string;
  /** What the uncertainty is made of. */
  budget?: BudgetTable;
  /** Of a difference: what may be said of it. */
  outcome?: OutcomeTold;
  sofa?: string;
  second?: string;
  /** Of a mean or constant. */
  readings: DerivedReading[];
  /** Of all others: what it was computed from. */
  from: Derivation[];
}

type Path = (file: string) => string;

export class Explanation {
  /** Undefined when there is no such fact. */
  readonly derivation: Derivation | undefined;
  readonly why: string | undefined;
  /** For an unknown id, the ids that may have been meant. */
  readonly nearest: string[];

  constructor(derivation: Derivation | undefined, why?: string, nearest: string[] = []) {
    this.derivation = derivation;
    this.why = why;
    this.nearest = nearest;
  }

  toString(): string {
    if (this.derivation) return print(this.derivation).join('\n');
    return [this.why, ...(this.nearest.length ? ['Nearest:', ...this.nearest.map((id) => `  ${id}`)] : [])].join('\n');
  }
}

/** `path` makes of the name of a file the one to be told. */
export function explain(facts: Facts, id: string, path: Path = (file) => file): Explanation {
  const fact = facts.get(id.trim());
  if (isFact(fact)) return new Explanation(derivationOf(facts, fact, path));
  const why = fact ? `${id} cannot be derived: ${fact.why}.` : `There is no fact "${id}".`;
  return new Explanation(undefined, why, suggestIds(facts, id));
}

function derivationOf(facts: Facts, fact: Fact, path: Path): Derivation {
  const from = facts.operands(fact);
  const budget = budgetTable(facts, fact);
  const outcome = tellOutcome(facts, fact);
  const rule = facts.about.digits === 'earned' && budget ? 'as many digits as the uncertainty earns' : roundingRules[fact.kind].says;
  const whole = fact.value.round(fact.decimals).equals(fact.value);
  return {
    id: fact.id, shown: fact.shown, spoken: fact.spoken, formula: fact.formula,
    value: fact.value.toString(), ends: !/^(energy|geometric) /.test(fact.formula) && !soundKinds.has(fact.kind) && Exact.parse(fact.value.toString())!.equals(fact.value), unit: fact.unit.id,
    rounding: whole ? 'nothing is rounded' : `rounded half away from zero to ${places(fact.decimals)} (${rule})`,
    ...(fact.spread?.sd !== undefined && { spread: `${fact.spread.runs} runs from ${fact.spread.min.toString()} to ${fact.spread.max.toString()}, standard deviation ${figure(fact.spread.sd)} (n−1)` }),
    ...(budget && { uncertainty: expandedShown(budget), budget }),
    ...(outcome && { outcome }),
    ...(fact.sofa && { sofa: fact.sofa }),
    ...(fact.second && { second: fact.second.shown }),
    readings: from.length ? [] : readingsOf(facts, fact, path),
    from: from.map((f) => derivationOf(facts, f, path)),
  };
}

function readingsOf(facts: Facts, fact: Fact, path: Path): DerivedReading[] {
  const aside = fact.kind === 'mean' ? fact.keys.flatMap((k) => facts.readings(k, { aside: true })).filter((r) => r.aside) : [];
  return [...fact.readings, ...aside].map((r) => tell(r, path));
}

function tell(r: Reading, path: Path): DerivedReading {
  const { value, decimals, unit } = r.quantity;
  const { firstLine = 0, lastLine = 0, samples = 0 } = r.log ?? {};
  const how = loggedInWords(r);
  return { run: r.run, shown: `${value.toFixed(decimals)} ${unit.symbol}`.trim(), file: path(r.place.file), line: r.place.line, ...(r.log && { log: { firstLine, lastLine, samples, ...(how && { how }) } }), ...(r.aside && { aside: r.aside.reason }) };
}

function places(decimals: number): string {
  return decimals === 0 ? 'a whole number' : decimals === 1 ? 'one decimal' : `${decimals} decimals`;
}

function print(d: Derivation, depth = 0): string[] {
  const lines = [
    `${d.shown}  ${d.id}`,
    d.formula === d.shown ? '' : `  = ${d.formula}`,
    `  ${[d.ends ? `exactly ${d.value}` : `${d.value}…`, unit(d.unit).symbol].filter(Boolean).join(' ')}; ${d.rounding}`,
    ...(depth === 0 ? [`  spoken: ${d.spoken}`] : []),
    d.second ? `  also ${d.second}` : '',
    d.spread ? `  ${d.spread}` : '',
    ...(d.budget && depth === 0 ? printBudget(d.budget).map((line) => `  ${line}`) : d.uncertainty ? [`  ${d.uncertainty}`] : []),
    d.outcome && depth === 0 ? `  ${d.outcome.outcome}: ${d.outcome.says}` : '',
    d.sofa ? `  on the sofa: ${d.sofa}` : '',
    ...d.readings.map((r) => `  ${where(r)}`),
    ...d.from.flatMap((f) => print(f, depth + 1).map((line) => `  ${line}`)),
  ];
  return lines.filter(Boolean);
}

function where(r: DerivedReading): string {
  const rows = r.log ? `${r.log.firstLine}–${r.log.lastLine}, from ${r.log.samples} samples${r.log.how ? `: ${r.log.how}` : ''}` : r.line;
  return `${r.run ? `run ${r.run}: ` : ''}${r.shown}  ${r.file}:${rows}${r.aside ? `  (set aside: ${r.aside})` : ''}`;
}
