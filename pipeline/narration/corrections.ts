// What the published episode had wrong, a line each, to be told or pinned.
import { correctionsOf, type Fact, factName, type Facts, whereOf } from '../facts/index.js';
import { finish, type Sentence } from './sentence.js';

/**
 * "At 3:12 we said 31 K. That was wrong. With the fresh paste, the core was four degrees cooler than with the old one. Read off the
 * wrong line." What is right is told by the sentence that says it, the plainest of them; where none does, by the name of the figure.
 */
export function corrections(facts: Facts, sentences: readonly Sentence[]): string[] {
  return correctionsOf(facts).map(({ correction: c, fact }) => {
    const [sentence] = sentences.filter((s) => s.facts.includes(fact.id)).sort((a, b) => a.facts.length - b.facts.length || a.text.length - b.text.length);
    const said = `${told(c.where)} we said ${c.said.replace(/[.!]+$/, '')}.`;
    return [`${said} That was wrong${sentence ? `. ${sentence.text}` : `: ${named(facts, fact)} is ${fact.spoken}.`}`, c.reason && finish(c.reason)].filter(Boolean).join(' ');
  });
}

/** "core temperature, rise (open bench, stock)" */
function named(facts: Facts, fact: Fact): string {
  const where = whereOf(facts, fact);
  return `${factName(facts.about, fact).replace(/^\p{Lu}(?=\p{Ll})/u, (first) => first.toLowerCase())}${where ? ` (${where})` : ''}`;
}

function told(where: string): string {
  if (/^\d/.test(where)) return `At ${where}`;
  return /^(?:on|in|at|under|during) /i.test(where) ? `${where[0]!.toUpperCase()}${where.slice(1)}` : `In the ${where.replace(/^the /i, '')}`;
}
