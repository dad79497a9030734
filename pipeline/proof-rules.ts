// What each code of a proof stands for, and what to do about it.
import { selfChecks } from './claims/index.js';
import type { Rule, Severity } from './places/index.js';

/** `severity`: what it counts as where the record does not say otherwise. */
export const proofRules: Record<string, Rule & { severity: Severity }> = {
  'claim-disagrees': { severity: 'error', says: 'A number is said that the record does not give', help: 'Say what the record gives; or, where the number speaks of something else, pin it on the line above to the fact it states, or as no claim.' },
  'claim-untied': { severity: 'note', says: 'It cannot be told what a number speaks of', help: 'Name the thing, the setting and the quantity in the sentence, or pin the number to a fact, or as no claim, in a comment on the line above.' },
  'claim-unsupported': { severity: 'warning', says: 'A comparison or a winner is said that the readings do not bear out', help: 'Say that they are level, or how far they scatter; or measure as often as the finding tells. figureproof explain FACT shows what the difference rests on.' },
  'percent-of-temperature': { severity: 'warning', says: 'A percentage is said of a temperature in °C or °F', help: 'Their zero is arbitrary. Say the difference, or a percentage of the rise over the room.' },
  'pin-form': { severity: 'error', says: 'A pin is not well formed', help: 'A pin quotes the words and names a fact, or says that they state nothing: <!-- pin: "29 degrees" = FACT; "K9" no claim -->' },
  'pin-words': { severity: 'error', says: 'The words of a pin are no number on the next line', help: 'Quote the number just as it stands on the line below the pin, or take the pin away.' },
  'pin-ambiguous': { severity: 'error', says: 'The words of a pin may be more than one number', help: 'Say which one is meant, "40" #2, or pin each number by itself.' },
  'pin-fact': { severity: 'error', says: 'A pin names a fact that the record does not give', help: 'Name a fact of the record; figureproof explain FACT tells about one.' },
  'bound-syntax': { severity: 'error', says: 'A template is not well formed', help: 'A bound script knows {{fact "ID"}}, {{say "ID"}} and {{name "setup" "ID"}}.' },
  'bound-fact': { severity: 'error', says: 'A template asks for a fact that the record does not give', help: 'Name a fact of the record; figureproof explain FACT tells about one.' },
  'bound-name': { severity: 'error', says: 'A template asks for a name that the record does not have', help: 'Name a thing of the record by its id.' },
  ...Object.fromEntries(selfChecks.map((c) => [c.code, { severity: 'error' as const, says: c.says, help: c.help }])),
  'nothing-said': { severity: 'note', says: 'A text has not a word in it', help: 'Write it, or take it out of the record; if it held something, it was emptied by mistake.' },
  'text-encoding': { severity: 'error', says: 'A file is not in the encoding it should have', help: 'Save the file as UTF-8.' },
};

/** Markdown, for the README. */
export function proofTable(): string {
  return ['| finding | severity | says |', '| --- | --- | --- |', ...Object.entries(proofRules).map(([code, r]) => `| \`${code}\` | ${r.severity} | ${r.says}. |`)].join('\n') + '\n';
}
