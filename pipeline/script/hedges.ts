// Words that loosen a number, and how far. Common practice, no published source: this one table is the place to change it.
// `low` and `high` are the bounds of exact ÷ said; `strict` keeps the said figure itself outside; a rounding at the
// precision said always passes for the kinds with `rounds`.

export interface Hedge {
  name: string;
  words: readonly string[];
  low: number;
  high: number;
  rounds: boolean;
  /** Before the number, or after it. */
  after?: true;
}

const near = 0.05;
const far = 0.25;

export const hedges: readonly Hedge[] = [
  { name: 'just under', low: 1 - near, high: 1, rounds: true, words: ['just under', 'just below', 'just shy of', 'just short of', 'a touch under', 'a touch below', 'a shade under', 'a shade below', 'a hair under', 'a hair below', 'a little under', 'a little below', 'a little less than', 'a little short of', 'slightly under', 'slightly below', 'slightly less than', 'a bit under', 'a bit below', 'a bit less than', 'a bit short of', 'a bit shy of', 'a tad under', 'a tad below', 'a tad less than', 'fractionally under', 'just less than', 'nearly', 'almost', 'not quite', 'barely', 'close on', 'as good as', 'a whisker under', 'a whisker below', 'a whisker off'] },
  { name: 'just over', low: 1, high: 1 + near, rounds: true, words: ['just over', 'just above', 'just more than', 'a touch over', 'a touch above', 'a shade over', 'a shade above', 'a hair over', 'a hair above', 'a little over', 'a little above', 'a little more than', 'slightly over', 'slightly above', 'slightly more than', 'a bit over', 'a bit above', 'a bit more than', 'a tad over', 'a tad above', 'a tad more than', 'just north of', 'fractionally over', 'a whisker over', 'a whisker above'] },
  { name: 'well under', low: 0.4, high: 1, rounds: false, words: ['well under', 'well below', 'far below', 'far less than', 'much less than', 'a lot less than', 'way under', 'way below', 'comfortably under', 'comfortably below'] },
  { name: 'well over', low: 1, high: 2, rounds: false, words: ['well over', 'well above', 'far above', 'far more than', 'much more than', 'a lot more than', 'way over', 'way above', 'comfortably over', 'comfortably above'] },
  { name: 'at most', low: 1 - 0.6, high: 1, rounds: true, words: ['no more than', 'not more than', 'at most', 'up to', 'within', 'at the most', 'never more than', 'never above', 'as much as', 'a maximum of'] },
  { name: 'at least', low: 1, high: 1 + far, rounds: true, words: ['at least', 'no less than', 'not less than', 'no fewer than', 'upwards of', 'a minimum of'] },
  { name: 'less than', low: 1 - far, high: 1, rounds: false, words: ['less than', 'fewer than', 'under', 'below', 'short of', 'shy of', 'south of', 'inside', 'not even'] },
  { name: 'more than', low: 1, high: 1 + far, rounds: false, words: ['more than', 'over', 'above', 'north of', 'beyond', 'past', 'better than', 'in excess of', 'greater than', 'tops', 'topped', 'topping', 'exceeds', 'exceed', 'exceeded', 'exceeding', 'surpasses', 'surpassed'] },
  { name: 'about', low: 1 - near, high: 1 + near, rounds: true, words: ['about', 'a good', 'a full', 'around', 'roughly', 'approximately', 'close to', 'near', 'near enough', 'something like', 'some', 'call it', 'maybe', 'say', 'circa', 'ca', 'approx', 'more or less', 'in the region of', 'in the neighbourhood of', 'in the neighborhood of', 'getting on for', '~', '≈', 'pretty much', 'practically', 'basically', 'virtually', 'roundabout', 'an estimated', 'probably', 'like', 'a rough', 'roughly speaking', 'just about', 'effectively', 'of the order of', 'on the order of'] },
  { name: 'about', after: true, low: 1 - near, high: 1 + near, rounds: true, words: ['or so', 'or thereabouts', 'give or take', 'ish', 'roughly', 'more or less', 'approximately', 'or about that', 'near enough'] },
  { name: 'just over', after: true, low: 1, high: 1 + near, rounds: true, words: ['and a bit', 'and a little', 'and change', 'or a bit more', 'and something', 'odd', 'or slightly more'] },
  { name: 'just under', after: true, low: 1 - near, high: 1, rounds: true, words: ['or a bit less', 'or slightly less', 'minus a bit'] },
  { name: 'at least', after: true, low: 1, high: 1 + far, rounds: true, words: ['or more', 'or above', 'or over', 'or higher', 'plus', 'and up', 'or better', 'at least'] },
  { name: 'at most', after: true, low: 0.4, high: 1, rounds: true, words: ['or less', 'or below', 'or under', 'or lower', 'or fewer', 'at most', 'tops', 'at the most'] },
];
