// The short telling: what a presenter reads who has three minutes.
import type { Measure } from '../facts/index.js';
import type { Sentence } from './sentence.js';

/** About three minutes; common practice, no published source. */
const budget = 180;
/** Comparisons told of one measure between setups, and as many between settings. */
const each = 2;

/**
 * How it was tested; then what the readings decide, measure by measure in the order of the record (those without a better end
 * only where no other is compared), setups before settings, the largest first; then what is about the same or too close to call; then, as long as there is time, a
 * sentence of each section that has not spoken yet. Each sentence names its subject, so that they can be read one after another.
 */
export function shortTelling(sentences: readonly Sentence[], measures: ReadonlyMap<string, Pick<Measure, 'better'>> = new Map()): Sentence[] {
  const ids = [...measures.keys()];
  const rank = (s: Sentence): number => (s.measure === undefined ? -1 : ids.indexOf(s.measure) + ((measures.get(s.measure)?.better ?? 'neither') === 'neither' ? ids.length + 1 : 0));
  // What makes no difference is told behind all that makes one.
  const place = (s: Sentence): number => rank(s) + (s.result?.decided ? 0 : 3 * (ids.length + 1));
  const telling = new Telling();
  const [first] = sentences;
  if (first && !first.result) telling.take(first, -1);

  const judged = sentences.filter((s) => s.result && rank(s) < ids.length);
  const results = (judged.length ? judged : sentences.filter((s) => s.result)).sort((a, b) => rank(a) - rank(b));
  const groups = new Map<string, Sentence[]>();
  for (const s of results) {
    const id = `${s.measure}/${s.result!.between}`;
    groups.set(id, [...(groups.get(id) ?? []), s]);
  }
  const ordered = [...groups.values()].map((g) => g.sort((a, b) => Number(b.result!.decided) - Number(a.result!.decided) || b.result!.size - a.result!.size));
  // One of each before a second of any; between setups before between settings.
  const between = (kind: 'setup' | 'setting') => ordered.filter((g) => g[0]!.result!.between === kind);
  const rounds = Array.from({ length: each }, (_, round) => [...between('setup'), ...between('setting')].flatMap((group) => group[round] ?? [])).flat();
  for (const decided of [true, false]) for (const s of rounds) if (s.result!.decided === decided) telling.take(s, place(s));

  const bySection = new Map<string, Sentence[]>();
  for (const s of sentences) bySection.set(s.section, [...(bySection.get(s.section) ?? []), s]);
  for (const own of bySection.values()) {
    if (own.some((s) => telling.has(s) || s.result)) continue;
    telling.take([...own].sort((a, b) => rank(a) - rank(b))[0]!, Infinity);
  }
  return telling.inOrder();
}

class Telling {
  #seconds = 0;
  readonly #chosen = new Map<Sentence, number>();

  has(s: Sentence): boolean {
    return this.#chosen.has(s);
  }

  /** Where there is time for it. */
  take(s: Sentence, rank: number): void {
    if (this.has(s) || this.#seconds + s.seconds > budget) return;
    this.#seconds += s.seconds;
    this.#chosen.set(s, rank);
  }

  /** By rank; those of one rank as they were taken. */
  inOrder(): Sentence[] {
    return [...this.#chosen].sort(([, a], [, b]) => (a === b ? 0 : a - b)).map(([s]) => s);
  }
}
