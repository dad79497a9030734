// Bytes to text: by byte order mark, by what the record says, else strictly UTF-8. Nothing is ever replaced by U+FFFD.
import { Source, type Finding, type Outcome } from '../places/index.js';

export const encodings = ['utf-8', 'utf-16', 'utf-16le', 'utf-16be', 'latin-1', 'windows-1252'] as const;
export type Encoding = (typeof encodings)[number];

/** The text of `bytes` without its byte order mark. A text that is not in the encoding is one finding, at the first bad byte where that can be told. */
export function decode(file: string, bytes: Uint8Array, encoding?: Encoding): Outcome<Source> {
  const chosen = chooseEncoding(file, bytes, bytes.length, encoding);
  if ('code' in chosen) return { value: undefined, findings: [chosen] };
  const { label } = chosen;
  if (label === 'windows-1252') return { value: new Source(file, fromWindows1252(bytes)), findings: [] };
  try {
    return { value: new Source(file, new TextDecoder(label, { fatal: true }).decode(bytes)), findings: [] };
  } catch {
    return { value: undefined, findings: [label === 'utf-8' ? badUtf8(file, bytes) : invalid(file, chosen.said)] };
  }
}

export interface ChosenEncoding {
  label: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
  /** Length of the byte order mark. */
  mark: number;
  /** As it is named to people. */
  said: Encoding;
}

/** By the beginning of the file (200 bytes are enough), its size, and what the record says. */
export function chooseEncoding(file: string, head: Uint8Array, size: number, encoding?: Encoding): ChosenEncoding | Finding {
  const marked = markOf(head);
  const said = marked ?? encoding ?? 'utf-8';
  if (marked && encoding && !agrees(marked, encoding)) {
    return wrong(file, `begins with a ${marked} byte order mark, but its encoding is given as ${encoding}`);
  }
  if (!marked && size > 3 && !encoding && looksLikeUtf16(head)) {
    return wrong(file, 'looks like UTF-16 without a byte order mark; say encoding: utf-16le or utf-16be');
  }
  if (said.startsWith('utf-16') && size % 2) return wrong(file, `is not whole ${said}: ${size} bytes is an odd number`);
  const label = said === 'latin-1' ? 'windows-1252' : said === 'utf-16' ? 'utf-16le' : said;
  return { label, said, mark: marked === 'utf-8' ? 3 : marked ? 2 : 0 };
}

export function invalid(file: string, encoding: Encoding): Finding {
  return wrong(file, `is not valid ${encoding}`);
}

// Bytes 80 to 9F, where Latin-1 has controls and Windows-1252 has letters; Latin-1 is read as Windows-1252, as the
// WHATWG Encoding Standard asks. Node's own decoder gives the controls.
const upper = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

/** The characters of all bytes, in order. */
export const windows1252 = fromWindows1252(Uint8Array.from({ length: 256 }, (_, i) => i));

function fromWindows1252(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1').replace(/[\u0080-\u009f]/g, (c) => upper[c.charCodeAt(0) - 0x80]!);
}

function markOf(b: Uint8Array): Encoding | undefined {
  if (b[0] === 0xef && b[1] === 0xbb && b[2] === 0xbf) return 'utf-8';
  if (b[0] === 0xff && b[1] === 0xfe) return 'utf-16le';
  if (b[0] === 0xfe && b[1] === 0xff) return 'utf-16be';
  return undefined;
}

function agrees(marked: Encoding, said: Encoding): boolean {
  return marked === said || (said === 'utf-16' && marked.startsWith('utf-16'));
}

/** Latin text in UTF-16 has a zero in every other byte. */
function looksLikeUtf16(b: Uint8Array): boolean {
  const end = Math.min(b.length & ~1, 200);
  let even = 0;
  let odd = 0;
  for (let i = 0; i < end; i += 2) {
    if (b[i] === 0) even++;
    if (b[i + 1] === 0) odd++;
  }
  return Math.max(even, odd) > end / 4;
}

/** `bytes` begin with a line of the file, before which it has `linesBefore`. */
export function badUtf8(file: string, bytes: Uint8Array, linesBefore = 0): Finding {
  let low = 0;
  let high = bytes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (decodesUpTo(bytes, middle + 1)) low = middle + 1;
    else high = middle;
  }
  const at = leadOf(bytes, low);
  const before = new Source(file, new TextDecoder('utf-8').decode(bytes.subarray(0, at)));
  const place = before.place(before.text.length);
  const line = place.line + linesBefore;
  const byte = bytes[at]!.toString(16).padStart(2, '0').toUpperCase();
  const letter = fromWindows1252(bytes.subarray(at, at + 1));
  const isTable = !/\.(ya?ml|md|markdown)$/i.test(file);
  return {
    code: 'text-encoding', severity: 'error', place: { file, line, column: place.column, endLine: line, endColumn: place.column + 1 }, said: byte,
    message: low === bytes.length
      ? 'The file ends in the middle of a UTF-8 character'
      : `Byte ${byte} is not UTF-8${/\p{L}|\p{S}|\p{P}/u.test(letter) ? ` (in Windows-1252 it is "${letter}")` : ''}; save the file as UTF-8${isTable ? ', or where the record names it say encoding: windows-1252 (or the one it has)' : ''}`,
  };
}

/** The decoder stumbles over the byte that should have gone on with a character; at fault is the one that began it. */
function leadOf(bytes: Uint8Array, stumble: number): number {
  for (let i = stumble - 1; i >= 0 && i >= stumble - 3; i--) {
    if (bytes[i]! < 0x80) break;
    if (bytes[i]! < 0xc0) continue;
    const length = bytes[i]! >= 0xf0 ? 4 : bytes[i]! >= 0xe0 ? 3 : 2;
    return length > stumble - i ? i : Math.min(stumble, bytes.length - 1);
  }
  return Math.min(stumble, bytes.length - 1);
}

/** A prefix that only breaks off inside a character still counts as good: the stream may go on. */
function decodesUpTo(bytes: Uint8Array, length: number): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(0, length), { stream: true });
    return true;
  } catch {
    return false;
  }
}

function wrong(file: string, what: string): Finding {
  return { code: 'text-encoding', severity: 'error', place: new Source(file, '').place(0), message: `The file ${what}` };
}
