// Names of several logs at once: logs/{setting}-run{run}.csv.
import { nearest } from '../places/index.js';

const placeholders = ['setup', 'setting', 'workload', 'run'] as const;
export type Placeholder = (typeof placeholders)[number];

/** The ids that a placeholder is likely to stand for. */
export type KnownIds = Partial<Record<Exclude<Placeholder, 'run'>, Iterable<string>>>;

export interface FilePattern {
  text: string;
  names: Placeholder[];
  /** Regular expression with one group a placeholder; what stands in each group is asked for. */
  source(group: (name: Placeholder) => string): string;
}

/** Undefined for a plain path; `why` for a pattern that cannot be read. */
export function readPattern(text: string): FilePattern | { why: string } | undefined {
  if (text.includes('*') || text.includes('?')) return { why: `"${text}" has a wildcard; write {setup}, {setting}, {workload} or {run} for what differs` };
  if (!/[{}]/.test(text)) return undefined;
  const names: Placeholder[] = [];
  let why: string | undefined;
  const pieces = text.split(/(\{[^{}/]*\})/).map((piece): { name: Placeholder } | { literal: string } => {
    const name = /^\{(.*)\}$/.exec(piece)?.[1];
    if (name === undefined) {
      if (/[{}]/.test(piece)) why ??= `a bracket is left open in "${text}"`;
      return { literal: piece.replace(/[.+^$()|[\]\\]/g, '\\$&') };
    }
    if (!(placeholders as readonly string[]).includes(name)) {
      const near = nearest(name, placeholders);
      why ??= `unknown placeholder {${name}}${near ? `; did you mean {${near}}?` : `; expected ${placeholders.map((p) => `{${p}}`).join(', ')}`}`;
    } else if (names.includes(name as Placeholder)) why ??= `{${name}} stands twice in "${text}"`;
    names.push(name as Placeholder);
    return { name: name as Placeholder };
  });
  const source: FilePattern['source'] = (group) => `^${pieces.map((p) => ('name' in p ? `(${group(p.name)})` : p.literal)).join('')}$`;
  return why === undefined ? { text, names, source } : { why };
}

export interface Match {
  ids: Partial<Record<Placeholder, string>>;
  /** Another reading of the same path by ids that are known too. */
  other?: Partial<Record<Placeholder, string>>;
}

// A run is one word, so that "run1.csv" and "run1-frames.csv" can be told apart.
const oneWord = '[\\p{L}\\p{N}]+';
const anything = '[^/]+?';

/**
 * What the placeholders stand for in this path, or undefined where it does not fit. Ids that are known go before any other
 * reading, the longest first: "tall-tower-stock-1.csv" is the tall tower at stock, not "tall" at "tower-stock".
 */
export function matchPattern(pattern: FilePattern, path: string, known: KnownIds = {}): Match | undefined {
  const ids = new Map(placeholders.map((name) => [name, name === 'run' ? [] : [...known[name] ?? []].sort((a, b) => b.length - a.length || (a < b ? -1 : 1)).map((id) => id.replaceAll('.', '\\.'))]));
  const read = (group: (name: Placeholder) => string) => {
    const m = new RegExp(pattern.source(group), 'u').exec(path);
    return m ? Object.fromEntries(pattern.names.map((n, i) => [n, m[i + 1]!])) as Match['ids'] : undefined;
  };
  const only = (list: (name: Placeholder) => readonly string[]) => read((name) => (name === 'run' ? oneWord : list(name).join('|') || '(?!)'));
  const best = only((name) => ids.get(name)!);
  if (!best) {
    // One id that nobody knows, among others that are known, is told apart by these.
    const unknown = pattern.names.filter((n) => n !== 'run').map((odd) => read((name) => (name === 'run' ? oneWord : name === odd ? anything : ids.get(name)!.join('|') || '(?!)'))).find((m) => m);
    const free = unknown ?? read((name) => (name === 'run' ? oneWord : [...ids.get(name)!, anything].join('|')));
    return free && { ids: free };
  }
  const other = only((name) => ids.get(name)!.toReversed());
  return { ids: best, ...(other && pattern.names.some((n) => best[n] !== other[n]) && { other }) };
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
