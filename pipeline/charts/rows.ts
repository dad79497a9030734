// Which readings a chart shows, and in which order and under which names.
import { type Fact, type Facts, isFact, isMeasured, type Key, type KeyField, type KeyParts, nameOf, splitKey } from '../facts/index.js';
import { nearest } from '../places/index.js';
import type { ChartRequest, Workbench } from './chart.js';

export interface Row {
  key: Key;
  parts: KeyParts;
  fact: Fact;
}

export interface Selection {
  measure: string;
  part: string;
  phase: string;
  rows: Row[];
  /** Fields that differ between the rows, in the order setup, setting, workload. */
  by: KeyField[];
  /** Whether one can be the best of all: different workloads cannot. */
  comparable: boolean;
  /** Whether any can be better than another: not where they differ in their workloads alone. */
  ranks: boolean;
}

const fields = ['setup', 'setting', 'workload'] as const;

/** The rows of a request, in the order asked for, else in the order of the record. Undefined (with a finding) when there are none. */
export function select(request: ChartRequest, facts: Facts, work?: Pick<Workbench, 'complain'>): Selection | undefined {
  const complain = work?.complain ?? (() => undefined);
  const measured = facts.keys().map((key) => ({ key, parts: splitKey(key)! })).filter(({ key, parts }) => parts.phase !== '' && isMeasured(facts, key));
  const measure = request.measure ?? (new Set(measured.map((m) => m.parts.measure)).size === 1 ? measured[0]!.parts.measure : undefined);
  if (!measure) return complain('picture-incomplete', `picture "${request.name}" does not say which measure it shows`);
  let pool = measured.filter((m) => m.parts.measure === measure);
  if (pool.length === 0) return complain('picture-empty', unknown(`nothing was read of "${measure}"`, measure, measured.map((m) => m.parts.measure)), measure);
  for (const field of ['part', 'phase'] as const) {
    const wanted = request[field] ?? (field === 'phase' && pool.some((m) => m.parts.phase === 'load') ? 'load' : pool[0]!.parts[field]);
    const left = pool.filter((m) => m.parts[field] === wanted);
    if (left.length === 0) return complain('picture-empty', unknown(`${measure} has no readings of ${field} "${wanted}"`, wanted, pool.map((m) => m.parts[field])), wanted);
    pool = left;
  }
  const { part, phase } = pool[0]!.parts;
  for (const [field, wanted] of [['setup', request.setups], ['setting', request.settings], ['workload', request.workload ? [request.workload] : undefined]] as const) {
    if (!wanted) continue;
    for (const id of wanted) {
      if (!pool.some((m) => m.parts[field] === id)) complain('picture-empty', unknown(`picture "${request.name}" asks for ${field} "${id}", of which there are no such readings`, id, pool.map((m) => m.parts[field])), id);
    }
    pool = pool.filter((m) => wanted.includes(m.parts[field]));
  }
  const rows: Row[] = [];
  for (const { key, parts } of pool) {
    const fact = facts.value(key);
    if (isFact(fact)) rows.push({ key, parts, fact });
    else complain('picture-empty', `picture "${request.name}" cannot show ${key}: ${fact.why}`, key);
  }
  if (rows.length === 0) return complain('picture-empty', `picture "${request.name}" has nothing to show`, request.name);
  const place = (field: typeof fields[number], id: string): number => {
    const order = { setup: request.setups ?? [...facts.about.setups.keys()], setting: request.settings ?? [...facts.about.settings.keys()], workload: [...facts.about.workloads.keys()] }[field];
    return order.indexOf(id);
  };
  rows.sort((a, b) => fields.reduce((sum, f) => sum || place(f, a.parts[f]) - place(f, b.parts[f]), 0));
  const by = fields.filter((f) => new Set(rows.map((r) => r.parts[f])).size > 1);
  return { measure, part, phase, rows, by, comparable: !by.includes('workload'), ranks: by.length === 0 || by.some((f) => f !== 'workload') };
}

/** The rows of a request that names its facts by id; they must be of one unit. */
export function selectFacts(request: ChartRequest, facts: Facts, work: Pick<Workbench, 'complain'>): Selection | undefined {
  const rows: Row[] = [];
  for (const id of request.facts ?? []) {
    const fact = facts.get(id);
    const parts = isFact(fact) ? splitKey(fact.subject) : undefined;
    if (isFact(fact) && parts) rows.push({ key: fact.subject, parts, fact });
    else work.complain('picture-empty', `picture "${request.name}" cannot show ${id}: ${fact && 'why' in fact ? fact.why : 'it is no fact of this record'}`, id);
  }
  const first = rows[0];
  if (!first) return undefined;
  const odd = rows.find((r) => r.fact.unit.id !== first.fact.unit.id);
  if (odd) return work.complain('picture-empty', `picture "${request.name}" would compare ${first.fact.shown} with ${odd.fact.shown}`, odd.fact.id);
  const { measure, part, phase } = first.parts;
  const by = fields.filter((f) => new Set(rows.map((r) => r.parts[f])).size > 1);
  return { measure, part, phase, rows, by, comparable: !by.includes('workload'), ranks: by.length === 0 || by.some((f) => f !== 'workload') };
}

/** The name of a row by the fields that differ; the setting where nothing does. */
export function rowName(facts: Facts, row: Row, by: readonly KeyField[]): string {
  const shown = by.length ? by : [row.parts.setting ? 'setting' : 'setup'] as const;
  return shown.map((f) => nameOf(facts.about, f, row.parts[f])).filter(Boolean).join(', ');
}

/** What all rows have in common, for the subtitle: "Open bench, Harbour loop". */
export function commonName(facts: Facts, row: Row, by: readonly KeyField[]): string {
  return fields.filter((f) => !by.includes(f) && row.parts[f]).map((f) => nameOf(facts.about, f, row.parts[f])).join(', ');
}

function unknown(message: string, word: string, known: string[]): string {
  const near = nearest(word, new Set(known));
  return near ? `${message}; did you mean "${near}"?` : `${message}; known are ${[...new Set(known)].map((k) => `"${k}"`).join(', ')}`;
}
