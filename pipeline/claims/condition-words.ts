// Words of a condition that a count is told of ("three of the five stay below forty degrees"), as data. A person extends these rows.
// `below`, `above`: beyond the mark; `at-most`, `at-least`: the mark itself counts.
export type Bound = 'below' | 'above' | 'at-most' | 'at-least';

const bounds: readonly [Bound, string][] = [
  ['below', 'under|below|beneath|less than|lower than|fewer than|short of|shorter than|quicker than|quieter than|cooler than|colder than|lighter than|smaller than|south of'],
  ['at-most', 'within|inside|at or below|at or under|or below|or under|or less|or lower|or fewer|at most|no more than|not more than|no higher than|no longer than|no louder than|no hotter than|up to'],
  ['above', 'over|above|past|beyond|more than|higher than|greater than|larger than|longer than|louder than|hotter than|warmer than|heavier than|slower than|exceed|exceeds|exceeded|exceeding|top|tops|topped|beat|beats|break|breaks|broke|pass|passes|passed|cross|crosses|crossed|clear|clears|cleared|north of|better than|faster than|outlast|outlasts|outlasted|outlive|outlives|outrun|outruns|survive|survives|survived'],
  ['at-least', 'at or above|at or over|or above|or over|or more|or higher|at least|no less than|no fewer than|no lower than|no slower than|reach|reaches|reached|hit|hits'],
];

/** The longest first, so that "at or below" is not read as "below". */
export const boundPhrases: readonly { words: readonly string[]; bound: Bound }[] = bounds
  .flatMap(([bound, text]) => text.split('|').map((p) => ({ words: p.split(' '), bound })))
  .sort((a, b) => b.words.length - a.words.length);

const set = (text: string): ReadonlySet<string> => new Set(text.split(' '));

/** Verbs of keeping to a mark: on the good side of it, whichever that is. */
export const keepingVerbs = set('meet meets met meeting keep keeps kept keeping stay stays stayed fit fits fitted hold holds held manage manages managed make makes made satisfy satisfies respect respects respected obey obeys obeyed observe observes comply complies complied honour honours pass passes passed clear clears cleared survive survives survived');
/** Verbs of not keeping to it. */
export const failingVerbs = set('miss misses missed missing fail fails failed failing');
/** What turns the condition round. */
export const negations = set('not n\'t don\'t doesn\'t didn\'t isn\'t aren\'t wasn\'t weren\'t can\'t cannot won\'t never');
/** A verb alone that takes up what was said just before: "should stay under 70, and four of the six do". */
export const proVerbs = set('do does did are is were was don\'t doesn\'t didn\'t aren\'t isn\'t weren\'t wasn\'t manage manages managed can can\'t');

const succeeding = set('pass passes passed clear clears cleared survive survives survived');
const afterwards = /^(?:easily|comfortably|narrowly|barely|just|too|still|here|there|now|with|without|and|but|so|in|on|at|every|each|outright)$/;

/** The first bound that the words state, and where it ends. */
export function boundIn(low: readonly string[], from: number, to: number): { bound: Bound; from: number; to: number } | undefined {
  for (let i = from; i < to; i++) {
    const p = boundPhrases.find((x) => x.words.every((w, k) => low[i + k] === w));
    // "four of the six pass": with no mark to go past, they are on the good side of it.
    if (p && p.words.length === 1 && succeeding.has(p.words[0]!) && !(i + 1 < to && /^(?:\p{L}|\d)/u.test(low[i + 1]!) && !afterwards.test(low[i + 1]!))) continue;
    if (p) return { bound: p.bound, from: i, to: i + p.words.length };
  }
  return undefined;
}

export function turned(bound: Bound): Bound {
  return ({ below: 'at-least', 'at-least': 'below', above: 'at-most', 'at-most': 'above' } as const)[bound];
}

/** The same but for the mark itself, on which few who speak insist. */
export function loosely(bound: Bound): Bound {
  return ({ below: 'at-most', 'at-most': 'below', above: 'at-least', 'at-least': 'above' } as const)[bound];
}
