// What the published episode had wrong, a line each, to be told or pinned.
import { correctionsOf, factName, type Facts, whereOf } from '../facts/index.js';
import { finish } from './sentence.js';

/** "At 3:12 we said 31 K. That was wrong: core temperature, rise (open bench, stock) is twenty-one kelvins. Read off the wrong line." */
export function corrections(facts: Facts): string[] {
  const { about } = facts;
  return correctionsOf(facts).map(({ correction: c, fact }) => {
    const where = whereOf(facts, fact);
    const name = factName(about, fact);
    const what = `${name.replace(/^\p{Lu}(?=\p{Ll})/u, (first) => first.toLowerCase())}${where ? ` (${where})` : ''}`;
    return [`${told(c.where)} we said ${c.said.replace(/[.!]+$/, '')}. That was wrong: ${what} is ${fact.spoken}.`, c.reason && finish(c.reason)].filter(Boolean).join(' ');
  });
}

function told(where: string): string {
  if (/^\d/.test(where)) return `At ${where}`;
  return /^(?:on|in|at|under|during) /i.test(where) ? `${where[0]!.toUpperCase()}${where.slice(1)}` : `In the ${where.replace(/^the /i, '')}`;
}
