// A script against itself, with or without a record.
import type { Finding, Source } from '../places/index.js';
import { selfChange } from './self-change.js';
import type { SelfCheck, SelfFault, SelfSentence } from './self-check.js';
import { selfList } from './self-list.js';
import { selfPlaces } from './self-places.js';
import { selfTwice } from './self-twice.js';
import { selfUnit } from './self-unit.js';
import type { Verdict } from './verdict.js';

export const selfChecks: readonly SelfCheck[] = [selfChange, selfList, selfPlaces, selfUnit, selfTwice];

/**
 * What cannot be. The record has the last word: nothing is said of numbers that all agree with it, unless the words beside them
 * contradict their order, nor again of one that disagrees. `alone`: there is no record.
 */
export function selfFindings(all: readonly SelfSentence[], mentions: Verdict[], script: Source, alone: boolean): Finding[] {
  const faults = selfChecks.flatMap((c) => c.run(all));
  if (faults.length === 0) return [];
  const spans = mentions.map((m) => ({ m, start: script.offset(m.place.line, m.place.column), end: script.offset(m.place.endLine, m.place.endColumn) }));
  return faults.flatMap((f): Finding[] => {
    const touched = spans.filter((s) => [f, ...f.against].some((x) => s.start < x.end && x.start < s.end));
    const own = spans.filter((s) => s.start < f.end && f.start < s.end);
    if (!alone && (f.byRounding || touched.some((s) => s.m.verdict === 'disagrees') || (!f.certain && touched.every((s) => s.m.verdict === 'agrees')))) return [];
    if (own.some((s) => s.m.why.startsWith('pinned'))) return [];
    for (const s of own) Object.assign(s.m, { verdict: 'disagrees', why: uncapital(f.message) });
    return [finding(f, script)];
  });
}

function finding(f: SelfFault, script: Source): Finding {
  return {
    code: f.code, severity: 'error', place: script.place(f.start, f.end), said: script.text.slice(f.start, f.end), subject: script.text.slice(f.start, f.end), message: `${f.message}.`,
    ...(f.suggest !== undefined && { suggest: f.suggest }), ...(f.against.length > 0 && { related: f.against.map((a) => ({ place: script.place(a.start, a.end), label: a.label })) }),
  };
}

function uncapital(text: string): string {
  return text.slice(0, 1).toLowerCase() + text.slice(1);
}
