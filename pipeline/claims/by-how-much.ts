import { WordClass } from '../script/index.js';
// "passes it by 1.3", "meets it by only a mere 0.4": where the word stands that says by how much.
const between = new WordClass(/^(?:only|just|about|around|roughly|nearly|almost|barely|a|an|mere|good|full|some|less|more|than|over|under|exactly|at|least|most|as|much|little|well|no|not|another|quite|scant|whole|fully|solid|healthy|comfortable|generous|massive|tiny|huge|modest|measly|paltry|slim|meagre|meager|whopping|clear|handy|cool)$/);

/** Index of the "by" that leads to a number at `from`; -1 where none does. */
export function byBefore(low: readonly string[], from: number): number {
  for (let k = from - 1; k >= 0 && k > from - 6; k--) {
    if (low[k] === 'by') return k;
    if (!between.has(low[k]!)) return -1;
  }
  return -1;
}
