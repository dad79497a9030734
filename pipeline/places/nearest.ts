// The known name that a mistyped one most likely meant.

/**
 * The nearest of `known` to `word` by edit distance (transpositions count one); where none is near enough, the one that
 * begins with it ("warn" for "warning"); else undefined.
 */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  const begins = new Set<string>();
  let best: string | undefined;
  let least = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const name of known) {
    if (word.length >= 3 && name.toLowerCase().startsWith(word.toLowerCase())) begins.add(name);
    const d = distance(word.toLowerCase(), name.toLowerCase(), least);
    if (d < least) {
      least = d;
      best = name;
    }
  }
  return best ?? (begins.size === 1 ? [...begins][0] : undefined);
}

/** Optimal string alignment distance, given up (returning `cap`) once it must reach `cap`. */
export function distance(a: string, b: string, cap = Infinity): number {
  if (Math.abs(a.length - b.length) >= cap) return cap;
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let d = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) d = Math.min(d, before[j - 2]! + 1);
      next.push(d);
    }
    if (Math.min(...next) >= cap) return cap;
    before = row;
    row = next;
  }
  return Math.min(cap, row[b.length]!);
}
