// A class of words, given as an expression that matches one word whole. A script says few different words many times over:
// what was answered of a word is kept.

/** So many words are remembered; after that it begins anew, as it may serve for days. */
const most = 5000;

export class WordClass {
  readonly #known = new Map<string, boolean>();

  constructor(private readonly pattern: RegExp) {}

  /** Whether a word, in small letters, is one of the class. */
  has(word: string): boolean {
    let it = this.#known.get(word);
    if (it === undefined) {
      if (this.#known.size >= most) this.#known.clear();
      this.#known.set(word, (it = this.pattern.test(word)));
    }
    return it;
  }

  /** Index of the first of the words `from` to `to` (exclusive) that is one of the class; -1 for none. */
  first(low: readonly string[], from = 0, to = low.length): number {
    for (let i = Math.max(0, from); i < to; i++) if (this.has(low[i]!)) return i;
    return -1;
  }

  /** Whether one of the words `from` to `to` (exclusive) is of the class. */
  in(low: readonly string[], from = 0, to = low.length): boolean {
    return this.first(low, from, to) >= 0;
  }
}
