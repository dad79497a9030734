// How many runs the method says there are.
import type { Place } from '../places/index.js';
import type { Episode } from '../records/index.js';

const words = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
const number = `(${words.join('|')}|\\d{1,2})`;
const promise = new RegExp(`\\b(?:(?:mean|average|median) of|each(?: \\w+)?,?|in) ${number} (?:\\w+ )?runs\\b|\\b${number} runs (?:each|per|of each|at each)\\b`, 'i');

/** "Each figure is the mean of three runs", "3 runs each", with where it stands. */
export function promisedRuns(episode: Pick<Episode, 'method'>): { runs: number; place: Place }[] {
  return episode.method.flatMap(({ text, place }) => {
    const found = promise.exec(text);
    const word = found?.[1] ?? found?.[2];
    const runs = word === undefined ? 0 : words.indexOf(word.toLowerCase()) + 1 || Number(word);
    return runs > 0 ? [{ runs, place }] : [];
  });
}
