// What the checks found, as a reader of the page may know it.
import type { Facts } from '../facts/index.js';
import type { Finding } from '../places/index.js';

export type PageFinding = Pick<Finding, 'code' | 'severity' | 'message' | 'subject' | 'accepted'> & Partial<Pick<Finding, 'place'>>;

export interface FindingRow {
  code: string;
  severity: string;
  message: string;
  subject: string;
  reason: string;
}

/** A title or a thumbnail stands in the record itself, so that its place does not tell. */
const ofTexts = /^(claim|self|pin|bound|texts)-/;

/** Those on what was measured. What is said of it in a script, a title or a thumbnail is the author's own affair. */
export function ofTheRecord(facts: Facts, findings: readonly PageFinding[]): PageFinding[] {
  const texts = new Set(facts.about.texts.map((t) => t.place.file).filter((file) => file !== facts.about.place.file));
  return findings.filter((f) => !ofTexts.test(f.code) && !(f.place && texts.has(f.place.file)));
}

export function acceptedFindings(findings: readonly PageFinding[]): FindingRow[] {
  return findings.filter((f) => f.accepted).map(row);
}

/** Those that nobody has accepted; a page with errors among them can only be a draft. */
export function openFindings(findings: readonly PageFinding[]): FindingRow[] {
  return findings.filter((f) => !f.accepted).map(row);
}

function row(f: PageFinding): FindingRow {
  return { code: f.code, severity: f.severity, message: f.message, subject: f.subject ?? '', reason: f.accepted?.reason ?? '' };
}
