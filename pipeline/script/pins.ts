// Pins: what a writer says about a number on the next line, in a comment of its own.
//   <!-- pin: "twenty-nine degrees" = rise:bench/stock/scene/temperature/core/load~workload=,phase=idle -->
//   <!-- pin: "61" = mean:bench/stock/scene/temperature/core/load; "K9" no claim; "40" #2 no claim -->
//   <!-- no claim: "K9"; "2160" -->
// In WebVTT the same stands in a note before the cue: NOTE pin: "61" = mean:…
import { nearest } from '../places/index.js';
import { blocks } from './blocks.js';
import { findMentions } from './mentions.js';
import { tokens } from './tokens.js';

/** All offsets are UTF-16 units of the whole script, ends exclusive. */
export interface Pin {
  words: string;
  /** Id of the fact that is spoken of; undefined for no claim. */
  fact: string | undefined;
  /** Where the fact's id, or the item itself, stands in the comment. */
  start: number;
  end: number;
  /** The pinned words in the script. */
  at: { start: number; end: number };
}

export interface PinFault {
  code: 'pin-form' | 'pin-words' | 'pin-ambiguous';
  start: number;
  end: number;
  message: string;
  suggest?: string;
}

interface Comment { start: number; end: number; form: 'pin' | 'no claim'; bodyStart: number; body: string; lines: { start: number; end: number }[] }

const opening = /^(?:<!--|NOTE\b)\s*(pins?|no[ -]claims?)\s*:/i;
const item = /\s*(?:"([^"]*)"|“([^”]*)”)\s*(?:#\s*(\d+))?\s*(?:=\s*([^;\s"]+(?:\s(?!no claim)[^;\s"]+)*)|(no[ -]claim)|)\s*(?:;|$)/giy;

export function readPins(text: string): { pins: Pin[]; faults: PinFault[] } {
  const pins: Pin[] = [];
  const faults: PinFault[] = [];
  if (!/(?:<!--|NOTE\b)\s*(?:pin|no[ -]claim)/i.test(text)) return { pins, faults };
  for (const c of comments(text)) {
    item.lastIndex = 0;
    let at = 0;
    while (at < c.body.length && c.body.slice(at).trim() !== '') {
      item.lastIndex = at;
      const m = item.exec(c.body);
      const start = c.bodyStart + at + /^\s*/.exec(c.body.slice(at))![0].length;
      if (!m || m[0] === '') {
        faults.push({ code: 'pin-form', start, end: c.bodyStart + c.body.trimEnd().length, message: 'A pin quotes the words and names a fact or says that they state nothing: "29 degrees" = FACT; "K9" no claim' });
        break;
      }
      at = item.lastIndex;
      const words = m[1] ?? m[2]!;
      const end = c.bodyStart + m.index + m[0].replace(/\s*;?\s*$/, '').length;
      const fact = m[4]?.trim();
      if (fact === undefined && !m[5] && c.form === 'pin') {
        faults.push({ code: 'pin-form', start, end, message: `The pin of "${words}" says neither a fact nor that it is no claim: "${words}" = FACT, or "${words}" no claim` });
        continue;
      }
      const found = find(text, c, words, m[3] === undefined ? undefined : Number(m[3]));
      if ('code' in found) faults.push({ ...found, start, end });
      else pins.push({ words, fact, at: found, start: fact === undefined ? start : end - fact.length, end });
    }
  }
  return { pins, faults };
}

function find(text: string, c: Comment, words: string, nth: number | undefined): { start: number; end: number } | Omit<PinFault, 'start' | 'end'> {
  if (words.trim() === '') return { code: 'pin-form', message: 'The pin quotes no words' };
  if (c.lines.length === 0) return { code: 'pin-words', message: 'No spoken line follows this pin' };
  const places = c.lines.flatMap(({ start, end }) => [...text.slice(start, end).matchAll(whole(words))].map((m) => ({ start: start + m.index, end: start + m.index + m[0].length })));
  if (nth !== undefined) return places[nth - 1] ?? { code: 'pin-words', message: places.length ? `"${words}" stands ${times(places.length)} on the next line, so there is no #${nth}` : missing(text, c, words) };
  if (places.length > 1) return { code: 'pin-ambiguous', message: `"${words}" stands ${times(places.length)} on the next line; say which: "${words}" #1, or quote more of the words`, suggest: `"${words}" #1` };
  if (places.length === 1) return places[0]!;
  const near = nearestOn(text, c, words);
  return { code: 'pin-words', message: missing(text, c, words), ...(near !== undefined && { suggest: near }) };
}

function missing(text: string, c: Comment, words: string): string {
  const near = nearestOn(text, c, words);
  const said = numbersOn(text, c);
  return `The next line does not say "${words}"${near !== undefined ? `; did you mean "${near}"?` : said.length ? `; its numbers are ${said.slice(0, 6).map((s) => `"${s}"`).join(', ')}` : ', and no number at all'}`;
}

function nearestOn(text: string, c: Comment, words: string): string | undefined {
  return nearest(words, numbersOn(text, c));
}

function numbersOn(text: string, c: Comment): string[] {
  return c.lines.flatMap(({ start, end }) => { const line = text.slice(start, end); return findMentions(tokens(line)).map((m) => line.slice(m.start, m.end)); });
}

/** The words as a whole: no letter or digit runs on at either end. */
function whole(words: string): RegExp {
  const plain = words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+');
  return new RegExp(`(?<![\\p{L}\\p{N}]|\\p{N}[.,])${plain}(?![\\p{L}\\p{N}]|[.,]\\p{N})`, 'gu');
}

function times(n: number): string {
  return n === 2 ? 'twice' : `${n} times`;
}

function comments(text: string): Comment[] {
  const out: Comment[] = [];
  const spoken = blocks(text);
  const vtt = /^\uFEFF?WEBVTT(?:[ \t\r\n]|$)/.test(text);
  const add = (start: number, stop: number, end: number): void => {
    const m = opening.exec(text.slice(start, stop));
    if (!m) return;
    const bodyStart = start + m[0].length;
    out.push({ start, end, form: /^pin/i.test(m[1]!) ? 'pin' : 'no claim', bodyStart, body: text.slice(bodyStart, stop), lines: [] });
  };
  if (vtt) for (const m of text.matchAll(/^NOTE\b[^\n]*(?:\n(?!\r?\n)[^\n]+)*/gm)) add(m.index, m.index + m[0].trimEnd().length, m.index + m[0].length);
  for (const b of spoken) {
    if (b.kind !== 'comment') continue;
    const close = text.indexOf('-->', b.start);
    add(b.start, close < 0 ? text.length : close, close < 0 ? text.length : close + 3);
  }
  let k = 0;
  for (const c of out.sort((a, b) => a.start - b.start)) {
    while (k < spoken.length && spoken[k]!.start < c.end) k++;
    let i = k;
    while (i < spoken.length && spoken[i]!.kind === 'comment') i++;
    // A cue may have several lines; anywhere else a pin speaks of one.
    for (; i < spoken.length && (spoken[i]!.kind === 'text' || spoken[i]!.kind === 'heading'); i++) {
      if (c.lines.length > 0 && (!vtt || /\n[ \t]*\r?\n/.test(text.slice(c.lines.at(-1)!.end, spoken[i]!.start)))) break;
      c.lines.push(spoken[i]!);
    }
  }
  return out;
}
