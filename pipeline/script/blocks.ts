// The lines of a script by what they are: headings, spoken text, stage directions, time marks, comments.
// Markdown is read line by line, as narration uses it: headings, lists, quotes, emphasis, comments, fences, front matter.

export interface Block {
  kind: 'heading' | 'text' | 'direction' | 'comment' | 'other';
  /** Offsets into the whole text. */
  start: number;
  end: number;
  /** Of a heading: 1 to 6. */
  depth: number;
  /** A blank line or another kind of block stands before it. */
  opens: boolean;
}

const cueTime = /^(?:\d{1,3}:)?\d{2}:\d{2}[.,]\d{3}\s+-->\s+/;

/** One block a line. WebVTT files have their cue times and identifiers put aside; `[brackets]` alone on a line are a stage direction. */
export function blocks(text: string): Block[] {
  const out: Block[] = [];
  const vtt = /^\uFEFF?WEBVTT(?:[ \t\r\n]|$)/.test(text);
  let at = 0;
  let fence: string | undefined;
  let front = /^---[ \t]*\r?\n/.test(text);
  let comment = false;
  let opens = true;
  let first = true;
  let note = false;
  while (at <= text.length) {
    const newline = text.indexOf('\n', at);
    const stop = newline < 0 ? text.length : newline;
    const end = text[stop - 1] === '\r' && stop > at ? stop - 1 : stop;
    const line = text.slice(at, end);
    const trimmed = line.trim();
    const put = (kind: Block['kind'], start: number, to: number, depth = 0): void => {
      out.push({ kind, start, end: to, depth, opens });
      opens = kind !== 'text';
    };
    const lead = line.length - line.trimStart().length;
    if (front) {
      if (!first && /^(?:---|\.\.\.)\s*$/.test(line)) front = false;
    } else if (comment) {
      if (line.includes('-->')) comment = false;
    } else if (fence) {
      if (trimmed.startsWith(fence)) fence = undefined;
    } else if (!trimmed) {
      opens = true;
      note = false;
    } else if (vtt && (first || note || cueTime.test(trimmed) || /^(?:NOTE|STYLE|REGION)\b/.test(trimmed) || cueTime.test(nextLine(text, stop)))) {
      if (/^(?:NOTE|STYLE|REGION)\b/.test(trimmed)) note = true;
      opens = !cueTime.test(trimmed) || opens;
    } else if (/^(?:```|~~~)/.test(trimmed)) {
      fence = trimmed.slice(0, 3);
    } else if (trimmed.startsWith('<!--')) {
      put('comment', at + lead, end);
      if (!trimmed.includes('-->')) comment = true;
    } else if (/^#{1,6}(?:\s|$)/.test(trimmed)) {
      const marks = /^#+/.exec(trimmed)![0].length;
      const body = trimmed.slice(marks).replace(/\s#+$/, '').trim();
      const start = at + line.indexOf(body, lead + marks);
      put('heading', start, start + body.length, marks);
    } else if (/^(?:=+|-{2,})$/.test(trimmed) && out.length && !opens && out.at(-1)!.kind === 'text') {
      out.at(-1)!.kind = 'heading';
      out.at(-1)!.depth = trimmed[0] === '=' ? 1 : 2;
      opens = true;
    } else if (/^(?:[-*_]\s*){3,}$/.test(trimmed)) {
      opens = true;
    } else if (/^[[(][^\])]*[\])]$/.test(trimmed) && !/^\[\d{1,3}:\d\d/.test(trimmed)) {
      put('direction', at + lead, end);
    } else {
      const marker = /^(?:>\s*)*(?:[-*+]\s+|\d{1,2}[.)]\s+)?/.exec(trimmed)![0].length;
      if (marker) opens = true;
      put('text', at + lead + marker, at + lead + trimmed.length);
    }
    first = false;
    at = stop + 1;
    if (newline < 0) break;
  }
  return out;
}

function nextLine(text: string, stop: number): string {
  const end = text.indexOf('\n', stop + 1);
  return text.slice(stop + 1, end < 0 ? text.length : end).trim();
}
