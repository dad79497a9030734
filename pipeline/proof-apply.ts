// Suggestions written into the script: only where there is just one way to put a number right, and shown as they are made.
import { FileTrouble, tell, writeWhole } from './files/index.js';
import { readFileSync, statSync } from 'node:fs';
import { type Finding, harmless, type PrintOptions, Source, width } from './places/index.js';

export interface Applied {
  /** What was changed, for a person. */
  lines: string[];
  /** The script as it now stands; undefined where nothing was changed. */
  script?: Source;
}

interface Change {
  start: number;
  end: number;
  old: string;
  new: string;
  finding: Finding;
}

/** `bytes` are the script as it was read; a file that has changed since then is left alone. */
export function applySuggestions(path: string, bytes: Uint8Array, script: Source, proofed: { findings: readonly Finding[] }, print: PrintOptions): Applied {
  const changes = changesOf(script, proofed.findings);
  if (changes.length === 0) return { lines: ['There is nothing to write: no finding has just one way to put it right.', ''] };
  const text = rewritten(script.text, changes);
  tell('write', path, () => {
    if (Buffer.compare(readFileSync(path), bytes) !== 0) throw new FileTrouble('write', print.path(script.file), 'it has changed since it was read; proof it again');
  });
  writeWhole(path, encodeLike(text, bytes), undefined, tell('read', path, () => statSync(path)).mode & 0o777);
  return { lines: [...changes.flatMap((c) => shown(c, script, print)), `${changes.length} ${changes.length === 1 ? 'number' : 'numbers'} put right in ${print.path(script.file)}; what it says now:`, ''], script: new Source(script.file, text) };
}

/** In the order of the text; what would overlap an earlier one is left. */
export function changesOf(script: Source, findings: readonly Finding[]): Change[] {
  const all = findings.flatMap((finding): Change[] => {
    const { place, said, suggest, accepted } = finding;
    if (place.file !== script.file || said === undefined || suggest === undefined || accepted || !finding.code.startsWith('claim-')) return [];
    const start = script.offset(place.line, place.column);
    const end = script.offset(place.endLine, place.endColumn);
    return script.text.slice(start, end) === said && said !== suggest ? [{ start, end, old: said, new: suggest, finding }] : [];
  }).sort((a, b) => a.start - b.start);
  return all.filter((c, i) => i === 0 || c.start >= all[i - 1]!.end);
}

export function rewritten(text: string, changes: readonly Pick<Change, 'start' | 'end' | 'new'>[]): string {
  let out = '';
  let at = 0;
  for (const c of changes) {
    out += text.slice(at, c.start) + c.new;
    at = c.end;
  }
  return out + text.slice(at);
}

/** In the encoding of `bytes`, with their byte order mark if they have one. */
export function encodeLike(text: string, bytes: Uint8Array): Uint8Array {
  const [a, b, c] = bytes;
  if (a === 0xff && b === 0xfe) return Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(text, 'utf16le')]);
  if (a === 0xfe && b === 0xff) return Buffer.concat([Buffer.from([0xfe, 0xff]), Buffer.from(text, 'utf16le').swap16()]);
  const mark = a === 0xef && b === 0xbb && c === 0xbf;
  return Buffer.from((mark && !text.startsWith('\uFEFF') ? '\uFEFF' : '') + text, 'utf8');
}

function shown({ finding, old, new: put }: Change, script: Source, { ink, columns, path }: PrintOptions): string[] {
  const { place } = finding;
  const line = script.line(place.line);
  const room = Math.max(20, columns - 2 - Math.max(width(old), width(put)));
  const [whole, rest] = [harmless(line.slice(0, place.column - 1)), harmless(line.slice(place.endColumn - 1))];
  const half = Math.floor(room / 2);
  const before = tail(whole, Math.max(half, room - width(rest)));
  const after = head(rest, Math.max(half, room - width(whole)));
  return [ink('strong', `${path(place.file)}:${place.line}:${place.column}`), ink('error', `- ${before}${harmless(old)}${after}`), ink('good', `+ ${before}${harmless(put)}${after}`), ''];
}

function head(text: string, room: number): string {
  let out = '';
  for (const c of text) {
    if (width(out + c) > room - 1) return out + c === text ? text : `${out}…`;
    out += c;
  }
  return out;
}

function tail(text: string, room: number): string {
  let out = '';
  for (const c of [...text].reverse()) {
    if (width(c + out) > room - 1) return c + out === text ? text : `…${out}`;
    out = c + out;
  }
  return out;
}
