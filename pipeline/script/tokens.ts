// Words, numbers and signs of one sentence, with offsets into it.

export interface Token {
  text: string;
  /** Lower case, straight apostrophe, a possessive ending taken off. */
  low: string;
  start: number;
  end: number;
  kind: 'word' | 'number' | 'mark' | 'time';
  /** No space before it. */
  tight: boolean;
  possessive: boolean;
}

// A time mark, a sound level with its weighting, a number with separators, a word (K9 and m³/h are one), any other sign.
const pattern = /\[\d{1,3}:\d\d(?::\d\d)?\]|dB ?\(A\)|\d{1,3}(?:,\d{3})+(?:\.\d+)?(?![\d])|\d+(?:\.\d+)?|\.\d+|[\p{L}µμΩ][\p{L}\p{N}³²]*(?:['’][\p{L}]+)*(?:\/\p{L}[\p{L}³²]*)?|\S/gu;

export function tokens(text: string): Token[] {
  const out: Token[] = [];
  for (let i = 0; i < text.length;) {
    const c = text.charCodeAt(i);
    if (isSpace(c)) { i++; continue; }
    const end = plainEnd(text, i, c);
    if (end > 0) {
      out.push(isLetter(c) ? word(text, i, end) : plain(text, i, end, isDigit(c) ? 'number' : 'mark'));
      i = end;
      continue;
    }
    pattern.lastIndex = i;
    const m = pattern.exec(text);
    if (!m) break;
    out.push(matched(text, m[0], m.index));
    i = pattern.lastIndex;
  }
  return out;
}

/** The end of a token of plain letters, of plain digits or of one sign, as nearly all are; 0 where the pattern has to say. */
function plainEnd(text: string, start: number, first: number): number {
  let i = start + 1;
  let c = text.charCodeAt(i);
  if (isLetter(first)) {
    if (first === 100 && c === 66) return 0;
    while (isLetter(c) || isDigit(c)) c = text.charCodeAt(++i);
    if (c > 127) return 0;
    // "it's", "m/s"
    while (c === 39 && isLetter(text.charCodeAt(i + 1))) {
      c = text.charCodeAt(++i);
      while (isLetter(c)) c = text.charCodeAt(++i);
      if (c > 127) return 0;
    }
    const next = text.charCodeAt(i + 1);
    return (c === 39 || c === 47) && (next > 127 || (c === 47 && isLetter(next))) ? 0 : i;
  }
  if (isDigit(first)) {
    while (isDigit(c)) c = text.charCodeAt(++i);
    if (c === 44 && isDigit(text.charCodeAt(i + 1))) return 0;
    if (c !== 46 || !isDigit(text.charCodeAt(i + 1))) return i;
    c = text.charCodeAt(++i);
    while (isDigit(c)) c = text.charCodeAt(++i);
    return i;
  }
  return first > 127 || first === 91 || (first === 46 && isDigit(c)) ? 0 : i;
}

function isLetter(c: number): boolean {
  return (c >= 97 && c <= 122) || (c >= 65 && c <= 90);
}

function isDigit(c: number): boolean {
  return c >= 48 && c <= 57;
}

function isSpace(c: number): boolean {
  return c === 32 || (c >= 9 && c <= 13);
}

function plain(text: string, start: number, end: number, kind: Token['kind']): Token {
  const raw = text.slice(start, end);
  return { text: raw, low: raw, start, end, kind, tight: isTight(text, start), possessive: false };
}

function isTight(text: string, start: number): boolean {
  if (start === 0) return false;
  const c = text.charCodeAt(start - 1);
  return c > 127 ? !/\s/.test(text[start - 1]!) : !isSpace(c);
}

function word(text: string, start: number, end: number): Token {
  const raw = text.slice(start, end);
  const low = raw.toLowerCase();
  const possessive = low.endsWith("'s") && raw.endsWith('s') && !contracted.test(raw);
  return { text: raw, low: possessive ? low.slice(0, -2) : low, start, end, kind: 'word', tight: isTight(text, start), possessive };
}

const contracted = /^(?:it|that|there|here|what|he|she|let|who|where)['’]s$/i;

function matched(text: string, raw: string, start: number): Token {
  const c = raw.charCodeAt(0);
  const digit = (c >= 48 && c <= 57) || (c === 46 && raw.length > 1);
  const kind = raw.length > 4 && raw[0] === '[' ? 'time' : digit ? 'number' : /^\p{L}|^[µμΩ]/u.test(raw) ? 'word' : 'mark';
  const possessive = kind === 'word' && /['’]s$/.test(raw) && !contracted.test(raw);
  const low = kind === 'word' ? raw.toLowerCase().replace(/’/g, "'") : raw;
  return { text: raw, low: possessive ? low.slice(0, -2) : low, start, end: start + raw.length, kind, tight: isTight(text, start), possessive };
}
