// Whether a "from" stands between where something came to and where it came from: "comes down to 37 decibels from 41".
const numeric = /^(?:\d.*|zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\p{L}+teen|(?:twen|thir|for|fif|six|seven|eigh|nine)ty|half|point|hundred|and)$/u;
/** Words that may stand before a number. */
const loose = /^(?:just|about|around|roughly|nearly|almost|only|a|an|over|under|some|well|the|mere|full)$/;

/** Index of the word that leads to a number at `at`. */
export function leadAt(low: readonly string[], at: number): number {
  let k = at - 1;
  while (k > 0 && loose.test(low[k]!)) k--;
  return k;
}

export function leadTo(low: readonly string[], at: number): string | undefined {
  return low[leadAt(low, at)];
}

/** The "from" at `at` stands between the figure that something came to and the one that it came from. */
export function comesFrom(low: readonly string[], at: number): boolean {
  let next = at + 1;
  while (loose.test(low[next] ?? '')) next++;
  if (!numeric.test(low[next] ?? '')) return false;
  let k = at - 1;
  // A unit may stand between, and nothing else.
  for (let words = 0; words < 3 && k > 0 && !numeric.test(low[k]!) && !/^(?:,|;|but|the|with|on|in|at)$/.test(low[k]!); words++) k--;
  if (!numeric.test(low[k]!) || low[k] === 'and') return false;
  while (k > 0 && (numeric.test(low[k]!) || loose.test(low[k]!) || low[k] === '-')) k--;
  return low[k] === 'to';
}
