// A sentence that takes back the one before it: what is taken back claims nothing.
//   "We said 31 kelvin. That was wrong."
//   "In the spring I called it 4 decibels quieter. It was not: I had the two columns mixed up."

const opening = String.raw`^(?:(?:but|and|now|well|sorry|no|actually|except|alas),? )*`;
const named = String.raw`(?:that|this|it|which|they|those|these|he|she)`;

/** Whatever was said: it is called wrong. */
const wrong = new RegExp(String.raw`${opening}${named} (?:is|are|was|were|turned out to be|proved(?: to be)?) (?:all |plain |simply |just |quite |flat |both )?(?:wrong|not right|not true|not so|not correct|untrue|incorrect|false|mistaken|nonsense|an? (?:mistake|error|slip|misreading|typo))\b`, 'i');

/** No more than a denial, which takes back what somebody was said to have said. */
const denied = new RegExp(String.raw`${opening}(?:${named} (?:is|are|was|were|did|does|do|has|had|would|will)(?: not|n't|n’t)|${named} (?:isn|wasn|weren|didn|doesn|hasn|wouldn)['’]t|not (?:so|true|right)|wrong|i (?:was|had been|stand) (?:wrong|mistaken|corrected))(?: at all| so| the case| true)?\s*(?:[.;:!,—–-]|$)`, 'i');

/** "Last time I said that …", "the box claims …", "my table gave …": somebody's words, and not what the record has. */
const reported = /\b(?:said|told|claimed|called|wrote|reported|announced|stated|promised|quoted|put it at|gave (?:it|you)|had it (?:down )?(?:at|as)|guessed|expected|predicted|thought|believed|assumed|feared|hoped|bet|reckoned|estimated)\b/i;

/** "Forty grams? No, 90.": a guess, and its answer. */
const guess = /^(?:\S+ ){0,7}\S+\?$/;
const answered = /^(?:no|nope|nah|not quite|not even (?:close|near)|wrong|way off|try|guess again|more like)\b/i;

const within = new RegExp(String.raw`${reported.source}[^;:—]*?[;,:—–]\s*(?:but |except |only )?(?:it|that|they|this|which)(?: (?:is|are|was|were|did|does|do|has|had)(?: not|n't|n’t)| (?:isn|wasn|weren|didn|doesn|don|hasn)['’]t)(?: so| true| at all)?\s*[,;:.—–]`, 'i');

/** "I wrote down 31 kelvin; it isn't, it is 13": where in a sentence ends what it takes back itself; 0 for nowhere. */
export function takenBackTo(text: string): number {
  const m = /n['’]t\b|\bnot\b/.test(text) ? within.exec(text) : null;
  return m ? m.index + m[0].length : 0;
}

/** "That's 2.8 degrees. No, sorry, 3.2.": one figure, and another for it. */
const one = /^\D*\d[\d.,]*\D*$/;
const putRight = /^(?:(?:no|nope|sorry|wait|oops|whoops|ah|oh|correction|scratch that|strike that|hold on|hang on)[\s,.!—–-]+)+(?:(?:it's|that's|i mean|make that|i meant|actually|rather|it is|that is)[\s,]+)*\d[\d.,]*(?: \p{L}+)?[.!]?(?: sorry[.!]?)?\s*$/iu;

export function takenBack(text: string, next: string): boolean {
  if (one.test(text) && putRight.test(next)) return true;
  if (text.trimEnd().endsWith('?') && answered.test(next) && guess.test(text.trim())) return true;
  return wrong.test(next) || (denied.test(next) && reported.test(text));
}
