// narration.md: the sentences by section, the cautions beside them, and how long it all takes.
import type { Facts } from '../facts/index.js';
import { corrections } from './corrections.js';
import { type Sentence, wordsPerMinute } from './sentence.js';
import { shortTelling } from './short.js';

export interface CautionText {
  text: string;
  because: string;
}

/** Markdown. Names and titles of the record are escaped, so that markup in them stays text. */
export function narrationText(facts: Facts, sentences: readonly Sentence[], cautions: readonly CautionText[]): string {
  const { title, disclosures } = facts.about;
  const blocks = [`# ${escaped(title || facts.about.id)}`];
  const total = sentences.reduce((sum, s) => sum + s.seconds, 0);
  blocks.push(`${sentences.length} ${sentences.length === 1 ? 'sentence' : 'sentences'} to choose from, about ${clock(total)} in all at ${wordsPerMinute} words a minute. Each stands on its own.`);
  if (disclosures.length) blocks.push('## To disclose', bullets(disclosures.map((d) => d.text)));
  const corrected = corrections(facts, sentences);
  if (corrected.length) blocks.push('## To correct', bullets(corrected));
  if (cautions.length) blocks.push('## To say with it', bullets(cautions.map((c) => c.text)));
  const short = shortTelling(sentences, facts.about.measures);
  if (short.length > 1 && short.length < sentences.length) blocks.push(`## In short (${clock(short.reduce((sum, s) => sum + s.seconds, 0))})`, short.map((s) => escaped(s.text)).join('\n\n'));
  for (const section of new Set(sentences.map((s) => s.section))) {
    const own = sentences.filter((s) => s.section === section);
    blocks.push(`## ${escaped(section)} (${clock(own.reduce((sum, s) => sum + s.seconds, 0))})`, own.map((s) => escaped(s.text)).join('\n\n'));
  }
  return `${blocks.join('\n\n')}\n`;
}

function bullets(items: readonly string[]): string {
  return items.map((i) => `- ${escaped(i)}`).join('\n');
}

/** "1:05": minutes and seconds. */
function clock(seconds: number): string {
  const whole = Math.ceil(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** CommonMark lets every ASCII punctuation character be escaped; only those that start markup in running text are. */
function escaped(text: string): string {
  return text.replace(/\s+/g, ' ').replace(/[\\`*_[\]<>#|~&]/g, '\\$&').replace(/^(\d+)([.)])/, '$1\\$2').replace(/^[-+]/, '\\$&');
}
