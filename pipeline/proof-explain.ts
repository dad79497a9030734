// figureproof proof --explain LINE: how each number on a line was read, and why this reading and no other.
import { type Considered, explainProof, type ReadNumber } from './claims/index.js';
import { UsageError } from './exit-codes.js';
import type { Facts } from './facts/index.js';
import { excerpt, harmless, type PrintOptions, type Source, wrap } from './places/index.js';
import { isBound } from './proof.js';

export async function explainLine(script: Source, facts: Facts, line: number, print: PrintOptions): Promise<string[]> {
  if (isBound(script)) throw new UsageError('A bound script takes its numbers from the record by name, so there is no reading to explain.');
  const last = script.place(script.text.length).line;
  if (line > last) throw new UsageError(`${print.path(script.file)} has ${last} lines; there is no line ${line}.`);
  const sentences = explainProof(script, facts, line).filter((s) => s.numbers.length > 0);
  if (sentences.length === 0) return [`Line ${line} says no number: ${harmless(script.line(line)).trim() || 'it is empty'}`];
  const paragraph = (text: string): string[] => wrap(harmless(text), Math.max(20, print.columns - 4)).map((l) => `    ${l}`);
  const say = (label: string, texts: readonly string[]): string[] => (texts.length ? [`  ${print.ink('faint', label)}`, ...texts.flatMap(paragraph)] : []);
  return sentences.flatMap((s) => s.numbers.flatMap((n) => [
    `${print.ink(tone(n), n.verdict.verdict)} ${print.ink('strong', `${print.path(script.file)}:${n.verdict.place.line}:${n.verdict.place.column}`)}`,
    ...excerpt(n.verdict.place, print, tone(n)),
    ...say('read as', n.number ? [n.number] : []),
    ...say('said to be', n.operation ? [n.operation + (n.because ? `, from "${n.because}"` : '')] : []),
    ...say('compared with', n.compared ? [`"${n.compared}"`] : []),
    ...say('names beside it', n.own),
    ...say('names elsewhere in the sentence', n.elsewhere),
    ...say('carried over from before', n.verdict.verdict === 'not-a-claim' ? [] : s.topics.length ? [s.topics.join(', ')] : []),
    ...say('why', [because(n)]),
    ...candidates(n.verdict.candidates, n.verdict.facts[0], print),
    '',
  ]));
}

function tone(n: ReadNumber): 'good' | 'error' | 'note' | 'faint' {
  return ({ agrees: 'good', disagrees: 'error', untied: 'note', 'not-a-claim': 'faint' } as const)[n.verdict.verdict];
}

function because({ verdict: v }: ReadNumber): string {
  const figures = v.recorded === undefined ? '' : `; the record gives ${v.recorded}${v.derivation ? ` (${v.derivation})` : ''}`;
  return `${v.why || 'the words name it outright'}${figures}`;
}

/** The reading taken is marked; a cost counts what it asks for that is not said. */
function candidates(list: readonly Considered[], taken: string | undefined, { ink, columns }: PrintOptions): string[] {
  if (list.length === 0) return [];
  const width = Math.max(...list.map((c) => c.shown.length));
  const lines = list.flatMap((c) => {
    const mark = c.fact === taken ? '>' : ' ';
    const lead = `  ${mark} ${c.cost.toFixed(1).padStart(4)}  ${c.fits ? 'fits' : '    '}  ${c.shown.padStart(width)}  `;
    const whole = `${lead}${c.fact}`;
    const rows = whole.length <= columns ? [whole] : [lead.trimEnd(), ...chunks(c.fact, columns - 8).map((f) => `        ${f}`)];
    return [...(c.fact === taken ? rows.map((r) => ink('strong', r)) : rows), ...(c.why ? [ink('faint', `        ${c.why}`)] : [])];
  });
  return [`  ${ink('faint', 'readings weighed: cost of what is unsaid, whether it fits, figure, fact')}`, ...lines];
}

function chunks(text: string, size: number): string[] {
  return Array.from({ length: Math.ceil(text.length / size) }, (_, i) => text.slice(i * size, (i + 1) * size));
}
