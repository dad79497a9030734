// Whether a script says itself that what it tells is too small to matter: in the sentence, or in the one behind it where that tells no number.
import type { Parsed } from './parse.js';

const no = String.raw`(?:\b(?:no|not|cannot|never|nobody|no[ -]one|nothing|hardly|barely|scarcely)|n['’]t)\b`;
/** A few words between, of one clause. */
const then = String.raw`(?: \w+){0,3} `;

const small = [
  // "within what matters", "by less than matters"
  String.raw`\b(?:within|inside|less than|below|short of) (?:what(?:ever)? )?(?:really )?(?:matters|counts)\b`,
  // "too small to matter", "not enough to worry about"
  String.raw`\b(?:too (?:small|little|few|slight|close|tiny)|nowhere near enough) to\b`, `${no}(?: \\w+)? enough(?: \\w+)? to\\b`,
  // "no difference worth having", "hardly worth the money"
  `${no}(?:${then}| )worth\\b`, `${no} worth\\b`,
  // "no audible difference"
  String.raw`${no}(?:${then}| )(?:meaningful|practical|noticeable|audible|visible|perceptible|real|useful|big|much of an?)(?: \w+)? (?:difference|gap|gain|change|advantage|lead|loss|deal)\b`,
  // "you won't notice", "nobody will ever hear that", "it hardly matters"
  `${no}(?:${then}| )(?:matters?|notice|noticed|hear|heard|feel|felt|care)\\b`, `${no} (?:matters?|notices?|hears?|feels?|cares?)\\b`,
  String.raw`\b(?:makes?|made|is|was|means?) (?:no|hardly any|little) (?:odds|difference)\b`,
  // "next to nothing", "I would call that nothing", "a draw", "would not swear to it"
  String.raw`\bnothing in it\b`, String.raw`\b(?:next to|close to|basically|practically|essentially|that's|that is|it's|which is) nothing\b(?! (?:like|but|more|less|special|new))`, String.raw`\bcall (?:it|that|this) (?:nothing|none|even|level|a draw)\b`,
  `${no} (?:swear|trust|bet)\\b`,
  String.raw`\b(?:negligible|irrelevant|immaterial|meaningless|insignificant|trivial|inaudible|imperceptible|unnoticeable|splitting hairs)\b`,
];
const words = new RegExp(small.join('|'), 'i');

export function belittled(text: string, next: Parsed | undefined): boolean {
  return words.test(text) || (next !== undefined && next.said.length === 0 && words.test(next.text));
}

/** Right before a number: "a mere", "not even", "by only", "less than". */
const least = /\b(?:only|just|mere(?:ly)?|barely|hardly|scarcely|not even|(?:no|not) more than|at (?:the )?most|(?:less|lower|fewer) than|under|within|up to)(?: (?:about|around|some|by|an?|the)){0,2}\s*$/i;

/** Of a number that `before` stands before. */
export function playedDown(before: string): boolean {
  return least.test(before);
}
