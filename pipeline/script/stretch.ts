// A stretch of a sentence as one text, as dozens of rules look at what stands before and behind a number. The sentence is put
// together once, and stretches are cut out of it: with twenty of them that takes a third of the time of joining words anew. For a
// list that is looked at once, joining is quicker.

/** The sentence that was looked at last: one is read at a time, so that none other need be kept. */
let at: readonly string[] = [];
let text = '';
let starts: readonly number[] = [0];

/** The words `from` to `to` (exclusive) with a blank between two, as `low.slice(from, to).join(' ')` would have it. `low` is not to change afterwards. */
export function stretch(low: readonly string[], from: number, to = low.length): string {
  const count = low.length;
  const a = from < 0 ? Math.max(0, count + from) : from;
  const b = to < 0 ? count + to : Math.min(to, count);
  if (a >= b) return '';
  if (low !== at) join(low);
  return text.slice(starts[a], starts[b]! - 1);
}

function join(low: readonly string[]): void {
  const own = new Array<number>(low.length + 1);
  let next = 0;
  for (let i = 0; i < low.length; i++) {
    own[i] = next;
    next += low[i]!.length + 1;
  }
  own[low.length] = next;
  [at, text, starts] = [low, low.join(' '), own];
}
