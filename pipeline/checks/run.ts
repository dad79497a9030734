// All checks over one episode, and what the record accepts or weighs otherwise. Severity and acceptance are applied here and nowhere else.
import { comparePlaces, type Finding, nearest, type Severity } from '../places/index.js';
import type { Episode } from '../records/index.js';
import type { Facts } from '../facts/index.js';
import { checks } from './list.js';
import { readLimits } from './limits.js';

/**
 * The findings of every check, in the order of their places, together with `others` (those of the record, the script and
 * the pictures), all with the record's acceptances and severities applied. Without `others`, acceptances of codes that
 * are no check's are left alone; with them, one that matches nothing is a finding.
 */
export function runChecks(episode: Episode, facts: Facts, others?: readonly Finding[]): Finding[] {
  const { limits, findings } = readLimits(episode);
  const context = { episode, facts, limits };
  const own = checks.flatMap((check) => check.run(context).map(({ severity, ...report }): Finding => ({ code: check.name, severity: severity ?? check.severity, ...report, message: sentence(report.message) })));
  const weighed = reweigh([...(others ?? []), ...findings.map((f) => ({ ...f, message: sentence(f.message) })), ...own], episode);
  const accepted = accept(weighed, episode, (code) => others !== undefined || checks.some((c) => c.name === code));
  return accepted.sort((a, b) => comparePlaces(a.place, b.place));
}

/** The record's acceptances and severities on findings of another kind than the checks'. */
export function weigh(findings: readonly Finding[], episode: Episode): Finding[] {
  return accept(reweigh([...findings], episode).filter((f) => f.code !== 'severity-unknown'), episode, () => false);
}

function reweigh(findings: Finding[], episode: Episode): Finding[] {
  const wanted = new Map(episode.severities.map(({ code, severity }) => [code, severity]));
  const codes = new Set([...checks.map((c) => c.name), ...findings.map((f) => f.code)]);
  const unknown = episode.severities.filter(({ code }) => !codes.has(code)).flatMap(({ code, place }): Finding[] => {
    const near = nearest(code, codes);
    return near ? [{ code: 'severity-unknown', severity: 'warning', place, subject: code, said: code, suggest: near, message: `No check is named "${code}"; did you mean "${near}"?` }] : [];
  });
  return [...findings, ...unknown].flatMap((f) => {
    const to = wanted.get(f.code);
    return to === 'off' ? [] : [to ? { ...f, severity: to satisfies Severity } : f];
  });
}

/** An acceptance speaks of one code and one subject; every finding of that code and subject is accepted by it. */
function accept(findings: Finding[], episode: Episode, judged: (code: string) => boolean): Finding[] {
  const used = new Set<number>();
  const marked = findings.map((f) => {
    const n = episode.accept.findIndex((a) => a.code === f.code && a.subject === f.subject);
    if (n < 0) return f;
    used.add(n);
    const { reason, place } = episode.accept[n]!;
    return { ...f, accepted: { reason, place } };
  });
  const unused = episode.accept.filter((a, n) => !used.has(n) && judged(a.code)).map((a): Finding => {
    const same = findings.filter((f) => f.code === a.code && f.subject !== undefined).map((f) => f.subject!);
    const near = same.length === 1 ? same[0] : nearest(a.subject, same);
    return {
      code: 'accept-unused', severity: 'warning', place: a.place, subject: a.subject, said: a.subject,
      message: same.length ? `Nothing with the code "${a.code}" is found for "${a.subject}"${near ? `; there is one for "${near}"` : ''}` : `No "${a.code}" is found here, so there is nothing to accept`,
      ...(near && { suggest: near }),
    };
  });
  return [...marked, ...unused];
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
