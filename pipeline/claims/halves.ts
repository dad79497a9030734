// Names of a setting that is a cross of two ("bench-limit", "mains-hush"): which words of a spoken form name which of the two.
//   bench-limit   "the power limit on the bench"   "power limit", "on the bench"
//   surge-mains   "Surge plugged in"               "plugged in"

export const prepositions: ReadonlySet<string> = new Set(['on', 'in', 'at', 'with', 'under', 'of', 'without', 'by', 'inside', 'for', 'over', 'from']);

/**
 * The halves of a spoken form that each name one of the two, by its place in the id. A word alone that may mean something
 * else too ("limit") needs a "with"; a half without a word of the id, where the other half has one, names the other.
 */
export function halves(parts: readonly string[], words: readonly string[]): [words: string[], axis: number][] {
  const found = words.findIndex((w, k) => k > 0 && k < words.length - 1 && prepositions.has(w));
  const cut = found > 0 ? found : parts.includes(words[0]!) && words.length > 2 ? 1 : -1;
  if (cut < 0) return [];
  const axisOf = (half: readonly string[]): number[] => parts.flatMap((p, k) => (half.includes(p) ? [k] : []));
  const [a, b] = [words.slice(0, cut), words.slice(cut)];
  const [i, j] = [axisOf(a), axisOf(b)];
  if (i.length > 1 || j.length > 1 || (i.length === 0 && j.length === 0) || (i.length === 1 && i[0] === j[0])) return [];
  const first = i[0] ?? 1 - j[0]!;
  const second = j[0] ?? 1 - i[0]!;
  return [
    ...(i.length === 0 && a.length < 2 ? [] : [[a.length > 1 ? a : ['with', ...a], first] as [string[], number]]),
    ...(j.length === 0 && b.length < 2 ? [] : [[b, second] as [string[], number]]),
  ];
}

/** The words that all values of an axis share ("blower", of "blower-low" and "blower-high"), by axis. */
export function nounsOf(axes: readonly (readonly (readonly string[])[])[]): string[][] {
  return axes.map((values) => (values[0] ?? []).filter((w) => values.every((v) => v.includes(w))));
}
