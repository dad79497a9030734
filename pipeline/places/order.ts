// The orders in which findings are told: for a program worst first, for a person worst last.
import type { Finding, Severity } from './finding.js';

/** Most severe first, accepted ones last, otherwise in the order of the places. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  const rank: Record<Severity, number> = { error: 0, warning: 1, note: 2 };
  const weight = (f: Finding): number => (f.accepted ? 3 : rank[f.severity]);
  const before = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
  return [...findings].sort((a, b) =>
    weight(a) - weight(b) || before(a.place.file, b.place.file) || a.place.line - b.place.line || a.place.column - b.place.column || before(a.code, b.code));
}

/** What has to be put right stands last, where a person's eye is when the command is done. */
export function worstLast(findings: readonly Finding[]): Finding[] {
  const rank = (f: Finding): string => (f.accepted ? 'accepted' : f.severity);
  const sorted = inOrder(findings);
  return ['accepted', 'note', 'warning', 'error'].flatMap((r) => {
    const own = sorted.filter((f) => rank(f) === r);
    return r === 'error' ? own : byCode(own);
  });
}

/** What is alike stands together, each kind where the first of it stood; errors stay in the order in which they are put right. */
function byCode(findings: readonly Finding[]): Finding[] {
  return [...new Set(findings.map((f) => f.code))].flatMap((code) => findings.filter((f) => f.code === code));
}
