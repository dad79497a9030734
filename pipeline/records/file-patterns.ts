// Names of several logs at once: logs/{setting}-run{run}.csv.
import { nearest } from '../places/index.js';

const placeholders = ['setup', 'setting', 'workload', 'run'] as const;
export type Placeholder = (typeof placeholders)[number];

export interface FilePattern {
  text: string;
  test: RegExp;
  names: Placeholder[];
}

/** Undefined for a plain path; `why` for a pattern that cannot be read. */
export function readPattern(text: string): FilePattern | { why: string } | undefined {
  if (text.includes('*') || text.includes('?')) return { why: `"${text}" has a wildcard; write {setup}, {setting}, {workload} or {run} for what differs` };
  if (!/[{}]/.test(text)) return undefined;
  const names: Placeholder[] = [];
  let why: string | undefined;
  const body = text.split(/(\{[^{}/]*\})/).map((piece) => {
    const name = /^\{(.*)\}$/.exec(piece)?.[1];
    if (name === undefined) {
      if (/[{}]/.test(piece)) why ??= `a bracket is left open in "${text}"`;
      return piece.replace(/[.+^$()|[\]\\]/g, '\\$&');
    }
    if (!(placeholders as readonly string[]).includes(name)) {
      const near = nearest(name, placeholders);
      why ??= `unknown placeholder {${name}}${near ? `; did you mean {${near}}?` : `; expected ${placeholders.map((p) => `{${p}}`).join(', ')}`}`;
    } else if (names.includes(name as Placeholder)) why ??= `{${name}} stands twice in "${text}"`;
    names.push(name as Placeholder);
    // A run is one word, so that "run1.csv" and "run1-frames.csv" can be told apart.
    return name === 'run' ? '([\\p{L}\\p{N}]+)' : '([^/]+?)';
  }).join('');
  return why === undefined ? { text, names, test: new RegExp(`^${body}$`, 'u') } : { why };
}

/** What the placeholders stand for in this path, or undefined where it does not fit. */
export function matchPattern(pattern: FilePattern, path: string): Partial<Record<Placeholder, string>> | undefined {
  const m = pattern.test.exec(path);
  return m ? Object.fromEntries(pattern.names.map((n, i) => [n, m[i + 1]!])) : undefined;
}

/** Order of file names with their numbers counted: run2 before run10. */
export function byNumber(a: string, b: string): number {
  const [x, y] = [a, b].map((s) => s.split(/(\d+)/));
  for (let i = 0; i < Math.min(x!.length, y!.length); i++) {
    const [p, q] = [x![i]!, y![i]!];
    if (p === q) continue;
    if (i % 2 && Number(p) !== Number(q)) return Number(p) - Number(q);
    return p < q ? -1 : 1;
  }
  return x!.length - y!.length;
}
