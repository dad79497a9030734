// What a check is: its name, one line of what it says, why, an example of right and of wrong, and the rule itself.
import type { Finding, Severity } from '../places/index.js';
import type { Episode } from '../records/index.js';
import type { Facts } from '../facts/index.js';
import type { Limits } from './limits.js';
import type { ThresholdName } from './thresholds.js';

export interface Context {
  episode: Episode;
  facts: Facts;
  limits: Limits;
}

/** A finding as a check hands it on; code and severity are added in one place, and severity only where it differs from the check's. */
export type Report = Omit<Finding, 'code' | 'severity' | 'accepted'> & { severity?: Severity };

/** A whole small record, with the tables and logs that it names. In a wrong one each line at fault ends with `# expect`, and with `: CHECK@FILE:LINE` where the fault is in a file it names. */
export interface Example {
  record: string;
  files?: Record<string, string>;
}

export interface Check {
  /** Kebab-case; the code of its findings. */
  name: string;
  says: string;
  why: string;
  severity: Severity;
  thresholds?: readonly ThresholdName[];
  right: Example;
  wrong: Example;
  run(context: Context): Report[];
}

/** A record as an example shows it: the indent of its first line is taken off every line. */
export function yaml(text: string): string {
  const body = text.replace(/^\n/, '').replace(/\n\s*$/, '\n');
  const indent = /^ */.exec(body)![0];
  return body.split('\n').map((line) => (line.startsWith(indent) ? line.slice(indent.length) : line)).join('\n');
}
