// What it was measured with, on and under: rooms, instruments, settings' parameters, parts, curves, prices.
import { constantPhases, type Facts, isFact, type Key, obtainedWords, quantityName, roomParts, splitKey } from '../facts/index.js';
import { show } from '../quantities/index.js';
import { held } from './held.js';
import { dateShown, whereShown } from './places-of.js';

export interface SmallTable {
  caption: string;
  head: string[];
  rows: string[][];
}

const phases: ReadonlySet<string> = new Set(constantPhases);

/** Room temperature of each test. */
export function rooms(facts: Facts): SmallTable | undefined {
  const rows = facts.keys().flatMap((key): string[][] => {
    const parts = splitKey(key);
    const fact = facts.value(key);
    if (!parts || parts.measure !== 'temperature' || !roomParts.includes(parts.part) || !isFact(fact)) return [];
    return [[whereShown(facts, parts) || 'Throughout', fact.shown + (fact.second ? ` (${fact.second.shown})` : ''), fact.kind === 'mean' ? String(fact.readings.length) : '']];
  });
  return table('Room temperature', ['Test', 'Mean', 'Readings'], rows);
}

export function instruments(facts: Facts): SmallTable | undefined {
  const rows = facts.about.instruments.map((i) => [
    i.name, i.measures.map((m) => measured(facts, m)).join(', '),
    i.resolution ? show(i.resolution.value, i.resolution.unit, i.resolution.decimals) : 'not stated', i.accuracy ?? 'not stated',
  ]);
  return table('Instruments', ['Instrument', 'Measures', 'Resolution', 'Accuracy'], rows);
}

function measured(facts: Facts, id: string): string {
  const [measure = '', part = ''] = id.split('/');
  return quantityName(facts.about, measure, part);
}

export function versions(facts: Facts): SmallTable | undefined {
  return table('Versions', ['What', 'Version'], facts.about.versions.map((v) => [v.name, v.version]));
}

/** What was tested: how it came, which sample, at what price on which day. An arrangement of which the record says none of it is left out, and so is the table where it says it of nothing. */
export function setups(facts: Facts): SmallTable | undefined {
  const holders = new Set(facts.holders());
  const tested = [...facts.about.setups.values()].filter((s) => !holders.has(s.id) && (s.kind === 'product' || s.obtained || s.price || s.sample));
  if (!tested.some((s) => s.obtained || s.price || s.sample)) return undefined;
  return table('Where it came from', ['Name', 'How it came', 'Sample', 'Price'], tested.map((s) => {
    const { price } = s;
    const shown = price ? show(price.amount.value, price.amount.unit, price.amount.decimals) + (price.date ? `, seen on ${dateShown(price.date)}` : '') : 'not stated';
    return [s.name, s.obtained ? obtainedWords[s.obtained] : 'not stated', s.sample ?? 'not stated', shown];
  }));
}

/** Limits, targets, offsets and rated values, by what they hold for. */
export function parameters(facts: Facts): SmallTable | undefined {
  const seen = new Set<string>();
  const rows = facts.keys().flatMap((key: Key): string[][] => {
    const parts = splitKey(key);
    const fact = facts.value(key);
    if (!parts || !phases.has(parts.phase) || !isFact(fact) || fact.kind !== 'constant') return [];
    const holds = whereShown(facts, { ...parts, phase: '' }) || 'All';
    const row = [holds, quantityName(facts.about, parts.measure, parts.part), parts.phase, fact.shown];
    const id = row.join('|');
    if (seen.has(id)) return [];
    seen.add(id);
    return [row];
  });
  return table('Limits, targets and offsets', ['Holds for', 'Of', 'Kind', 'Value'], rows);
}

export function system(facts: Facts): SmallTable | undefined {
  return table('Parts list', ['Part', 'Detail', 'How it came'], facts.about.system.map((p) => [p.name, p.detail ?? '', p.obtained ? obtainedWords[p.obtained] : '']));
}

export function curves(facts: Facts): SmallTable[] {
  return facts.about.curves.flatMap((c) => table(c.name, [c.against.label, c.of.label], c.points.map((p) => [p.at, p.value].map((q) => show(q.value, q.unit, q.decimals)))) ?? []);
}

function table(caption: string, head: string[], rows: string[][]): SmallTable | undefined {
  return rows.length ? { caption, head, rows: rows.map((row) => row.map(held)) } : undefined;
}
