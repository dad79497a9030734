// A finding as a person reads it in a terminal: where, what, the line itself with the span underlined, and the way out.
import type { Finding } from './finding.js';
import type { Place } from './place.js';
import { harmless, width, wrap } from './width.js';

export type Ink = 'error' | 'warning' | 'note' | 'faint' | 'strong' | 'good';

export interface PrintOptions {
  /** Columns of the terminal. */
  columns: number;
  ink: (ink: Ink, text: string) => string;
  /** The text of a line of a file, where it is at hand. */
  line: (file: string, line: number) => string | undefined;
  /** The name under which a person in this folder finds the file. */
  path: (file: string) => string;
  /** Whether a record accepts findings, so that a warning is followed by the line that does so. */
  acceptable?: boolean;
}

const tab = 4;
const inset = '  ';

/** Lines without line ends; what `last`, printed just above, has shown already is not shown again. */
export function printFinding(finding: Finding, options: PrintOptions, last?: Finding): string[] {
  const { ink, columns } = options;
  const tone: Ink = finding.accepted ? 'faint' : finding.severity;
  const head = `${ink(tone, finding.accepted ? `accepted ${finding.severity}` : finding.severity)} ${ink('faint', finding.code)} ${ink('strong', harmless(where(finding.place, options)))}`;
  const say = (label: string, text: string | undefined): string[] => (text ? paragraph(label === '' ? text : `${label}: ${text}`, columns) : []);
  const reason = say('accepted because', finding.accepted && `${finding.accepted.reason} (${where(finding.accepted.place, options)})`);
  // What nobody need act on is told in short; the JSON has it all.
  if (finding.accepted) return [head, ...say('', finding.message), ...reason];
  const lines = [
    head,
    ...say('', finding.message),
    ...(last && samePlace(last.place, finding.place) ? [] : excerpt(finding.place, options, tone)),
    ...say('derived', withoutRepeat(finding.derivation, finding.message)),
    ...say('likely', last?.code === finding.code && last.slip === finding.slip ? undefined : withoutRepeat(finding.slip, finding.message)),
    ...say('write instead', finding.suggest ?? (finding.turn && `${finding.turn.suggest} (for ${finding.turn.text}, column ${finding.turn.place.column})`)),
  ];
  if (finding.severity === 'note') return lines;
  return [...lines, ...gathered(finding.related ?? [], finding.place, options).flatMap((line) => say('see', line)), ...acceptance(finding, options)];
}

/** The line with its span underlined: tabs opened up, long lines cut around the span. */
export function excerpt(place: Place, options: PrintOptions, tone: Ink = 'error'): string[] {
  const text = options.line(place.file, place.line);
  if (text === undefined) return [];
  const whole = place.endLine > place.line;
  const from = Math.min(place.column - 1, text.length);
  const to = whole ? text.length : Math.min(Math.max(place.endColumn - 1, from), text.length);
  const [before, span, after] = [text.slice(0, from), text.slice(from, to), text.slice(to)];
  const lead = open(before, 0);
  const mid = open(span, width(lead));
  const tail = open(after, width(lead) + width(mid));
  const number = String(place.line);
  const room = Math.max(20, options.columns - inset.length - number.length - 4);
  const cut = window(lead, mid, tail, room);
  const gutter = `${inset}${options.ink('faint', `${number} |`)} `;
  const blank = `${inset}${options.ink('faint', `${' '.repeat(number.length)} |`)} `;
  const mark = '^'.repeat(Math.max(1, width(cut.mid)));
  const more = whole ? ` (to line ${place.endLine})` : '';
  return [`${gutter}${cut.lead}${cut.mid}${cut.tail}`.trimEnd(), `${blank}${' '.repeat(width(cut.lead))}${options.ink(tone, mark)}${more}`];
}

/** What the record says to accept a finding, ready to be copied: broken where YAML allows it, and nowhere else. */
function acceptance({ severity, code, subject }: Finding, { acceptable, columns, ink }: PrintOptions): string[] {
  // An acceptance that has nothing to accept is taken out, not accepted.
  if (!acceptable || severity !== 'warning' || !subject || code === 'accept-unused') return [];
  const plain = /^[\w/][\w/-]*$/.test(subject) && /[a-z]/i.test(subject) && !/^(?:true|false|null|yes|no|on|off)$/i.test(subject);
  const named = `subject: ${plain ? subject : JSON.stringify(harmless(subject))}`;
  const whole = `${inset}accept: {finding: ${code}, ${named}, reason: …}`;
  const lines = width(whole) <= columns ? [whole] : [`${inset}accept: {finding: ${code}, reason: …,`, `${inset}  ${named}}`];
  return lines.map((line) => ink('faint', line));
}

function samePlace(a: Place, b: Place): boolean {
  return a.file === b.file && a.line === b.line && a.column === b.column && a.endLine === b.endLine && a.endColumn === b.endColumn;
}

function where(place: Place, options: PrintOptions): string {
  return `${options.path(place.file)}:${place.line}:${place.column}`;
}

/** One line a file, its lines in order; places that say no more than the finding's own are left out. */
function gathered(related: NonNullable<Finding['related']>, own: Place, options: PrintOptions): string[] {
  const byFile = new Map<string, string[]>();
  for (const { label, place } of related) {
    if (place.file === own.file && place.line === own.line) continue;
    const lines = byFile.get(place.file) ?? byFile.set(place.file, []).get(place.file)!;
    const line = `:${place.line}${label ? ` (${label})` : ''}`;
    if (!lines.includes(line)) lines.push(line);
  }
  return [...byFile].map(([file, lines]) => options.path(file) + few(lines).join(', '));
}

function few(lines: string[]): string[] {
  return lines.length > 6 ? [...lines.slice(0, 5), `and ${lines.length - 5} more`] : lines;
}

function withoutRepeat(text: string | undefined, message: string): string | undefined {
  return text && message.includes(text) ? undefined : text;
}

function paragraph(text: string, columns: number): string[] {
  return harmless(text).split('\u240a').flatMap((part) => wrap(part, Math.max(20, columns - inset.length))).map((l) => inset + l);
}

function open(text: string, at: number): string {
  let out = '';
  for (const part of harmless(text).split(/(\t)/)) out += part === '\t' ? ' '.repeat(tab - ((at + width(out)) % tab)) : part;
  return out;
}

/** What fits of a line when the span has to be seen: all of it, or a piece around the span with an ellipsis where it was cut. */
function window(lead: string, mid: string, tail: string, room: number): { lead: string; mid: string; tail: string } {
  if (width(lead) + width(mid) + width(tail) <= room) return { lead, mid, tail };
  const shownMid = width(mid) > room - 8 ? `${first(mid, room - 9)}…` : mid;
  const left = room - width(shownMid);
  const keepTail = Math.min(width(tail), Math.max(Math.floor(left / 2), left - width(lead)));
  const keepLead = left - keepTail;
  return {
    lead: width(lead) <= keepLead ? lead : `…${last(lead, keepLead - 1)}`,
    mid: shownMid,
    tail: width(tail) <= keepTail ? tail : `${first(tail, keepTail - 1)}…`,
  };
}

function first(text: string, columns: number): string {
  let out = '';
  for (const c of text) {
    if (width(out + c) > columns) break;
    out += c;
  }
  return out;
}

function last(text: string, columns: number): string {
  let out = '';
  for (const c of [...text].reverse()) {
    if (width(c + out) > columns) break;
    out = c + out;
  }
  return out;
}
