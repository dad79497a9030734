// What was left out and what was taken from elsewhere.
import { type Facts, isFact, type Key, splitKey } from '../../facts/index.js';
import { definite } from '../names.js';
import type { Stage } from '../scenes.js';
import type { Draft } from '../sentence.js';
import { quantity } from '../subject.js';

const section = 'What to be open about';
const numberWord = /\d|\b(zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|\w+ty|hundred|thousand|half|third|quarter|first|second|twice)\b/i;

/** Runs set aside. The author's reason is said with it unless it holds a number of its own, which no fact would stand for. */
export function setAside(stage: Stage): Draft[] {
  return stage.facts.keys().flatMap((key): Draft[] => {
    const aside = stage.facts.readings(key, { aside: true }).filter((r) => r.aside);
    if (aside.length === 0) return [];
    const parts = splitKey(key)!;
    const reasons = [...new Set(aside.map((r) => r.aside!.reason.trim().replace(/[.\s]+$/, '')))].filter((r) => r && !numberWord.test(r));
    const which = aside.length === 1 ? 'a run' : 'more than one run';
    const why = reasons.length ? `: ${reasons.join('; ')}` : '';
    return [{ section, facts: [], text: () => `${stage.opening(parts)}${which} of ${definite(quantity(stage, parts))} ${stage.when({ key, parts })} was set aside and counts in no average${why}` }];
  });
}

/** Results of earlier episodes that stand beside this one's. */
export function quoted(stage: Stage): Draft[] {
  return stage.facts.about.quotes.flatMap((quote): Draft[] => {
    const fact = valueOf(stage.facts, quote.as);
    const parts = splitKey(quote.as);
    if (!fact || !parts) return [];
    return [{ section, facts: [fact], text: (v) => `${stage.opening(parts)}${definite(quantity(stage, parts))} of ${v.say(fact)} ${stage.when({ key: quote.as, parts })} is quoted from an earlier episode` }];
  });
}

function valueOf(facts: Facts, key: Key) {
  const fact = facts.value(key);
  return isFact(fact) ? fact : undefined;
}
