// What the checks found, as a reader of the page may know it.
import type { Finding } from '../places/index.js';

export type PageFinding = Pick<Finding, 'code' | 'severity' | 'message' | 'subject' | 'accepted'>;

export interface FindingRow {
  code: string;
  severity: string;
  message: string;
  subject: string;
  reason: string;
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
