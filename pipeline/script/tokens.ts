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
  for (const m of text.matchAll(pattern)) {
    const raw = m[0];
    const start = m.index;
    const c = raw.charCodeAt(0);
    const digit = (c >= 48 && c <= 57) || (c === 46 && raw.length > 1);
    const kind = raw.length > 4 && raw[0] === '[' ? 'time' : digit ? 'number' : /^\p{L}|^[µμΩ]/u.test(raw) ? 'word' : 'mark';
    const possessive = kind === 'word' && /['’]s$/.test(raw) && !/^(?:it|that|there|here|what|he|she|let|who|where)['’]s$/i.test(raw);
    const plain = kind === 'word' ? raw.toLowerCase().replace(/’/g, "'") : raw;
    out.push({ text: raw, low: possessive ? plain.slice(0, -2) : plain, start, end: start + raw.length, kind, tight: start > 0 && !/\s/.test(text[start - 1]!), possessive });
  }
  return out;
}
