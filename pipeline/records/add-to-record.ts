// Lines put into a record that a person wrote: everything that stands there stays as it is, comments and all.
import { Source } from '../places/index.js';
import { readDocument } from './document.js';

interface Section {
  name: string;
  /** What stands behind the colon, comments left out. */
  inline: string;
  /** The lines below, without blank lines at the end. */
  lines: string[];
  /** Index of its first line, and of the line behind its last. */
  from: number;
  to: number;
}

/**
 * The record with the sections of `proposal` (block style, as an import proposes it) added: new sections at the end, entries
 * of a section that is there behind its last one, names that stand there already left out. `clash` names the sections that
 * are written in a form into which nothing can be put without changing what is there.
 */
export function addToRecord(record: string, proposal: string): { text: string } | { clash: string[] } {
  const lineEnd = record.includes('\r\n') ? '\r\n' : '\n';
  const lines = record.split(/\r?\n/);
  while (lines.length && lines.at(-1) === '') lines.pop();
  const there = new Map(sectionsOf(lines).map((s) => [s.name, s]));
  const clash: string[] = [];
  const inserts: { at: number; lines: string[] }[] = [];
  const ends: string[] = proposal.split('\n').filter((l, i, all) => l.startsWith('#') && !all.slice(0, i).some((p) => /^\w/.test(p)));
  const ownComment = ends.length;
  for (const add of sectionsOf(proposal.split('\n'))) {
    const old = there.get(add.name);
    const entries = entriesOf(add);
    if (!old) {
      ends.push(add.inline ? `${add.name}: ${add.inline}` : `${add.name}:`, ...add.lines);
      continue;
    }
    const flow = /^\[(.*)\]$/.exec(old.inline);
    const flowMap = /^\{(.*)\}$/.exec(old.inline);
    const oneLine = old.lines.length === 0 && entries.every((e) => e.length === 1);
    if (old.inline === '' || (flow && flow[1]!.trim() === '')) {
      const first = old.lines.find((l) => /^\s*[^\s#]/.test(l));
      const indent = /^\s*/.exec(first ?? '  ')![0];
      const fresh = entries.filter((e) => !isThere(e, old.lines, indent)).map((e) => e.map((l) => l.replace(/^ {2}/, indent)));
      const comments = fresh.length > 0 && ownComment > 0 && entries.some((e) => e[0]!.startsWith('  - ')) ? ends.slice(0, ownComment).map((c) => indent + c) : [];
      if (flow) inserts.push({ at: old.from, lines: [`${add.name}:`] });
      inserts.push({ at: old.to, lines: [...comments, ...fresh.flat()] });
    } else if (flow && oneLine) {
      // A list may name things by their ids alone.
      const items = entries.map((e) => (e[0]!.startsWith('  - ') ? e[0]!.slice(4) : nameOf(e) ?? ''));
      inserts.push({ at: old.from, lines: [`${add.name}: [${[flow[1]!.trim(), ...items].join(', ')}]`] });
    } else if (flowMap && oneLine && entries.every((e) => nameOf(e) !== undefined)) {
      inserts.push({ at: old.from, lines: [`${add.name}: {${[flowMap[1]!.trim(), ...entries.map((e) => e[0]!.trim())].filter(Boolean).join(', ')}}`] });
    } else clash.push(add.name);
  }
  if (clash.length) return { clash };
  for (const { at, lines: put } of inserts.sort((a, b) => b.at - a.at)) {
    const replaces = /^\w[\w ]*:/.test(put[0] ?? '') ? 1 : 0;
    lines.splice(at, replaces, ...put);
  }
  if (ends.length > ownComment) lines.push('', ...ends);
  const text = `${lines.join(lineEnd)}${lineEnd}`;
  return readDocument(new Source('record', text)).findings.length > readDocument(new Source('record', record)).findings.length ? { clash: [...there.keys()].filter((n) => sectionsOf(proposal.split('\n')).some((s) => s.name === n)) } : { text };
}

function sectionsOf(lines: readonly string[]): Section[] {
  const out: Section[] = [];
  lines.forEach((line, i) => {
    const m = /^([A-Za-z_][\w ]*):(?:\s+(.*))?$/.exec(line);
    if (m) {
      out.push({ name: m[1]!, inline: (m[2] ?? '').replace(/(^|\s)#.*$/, '').trim(), lines: [], from: i, to: i + 1 });
      return;
    }
    const open = out.at(-1);
    // Comments and blank lines at the margin belong to what follows them.
    if (!open || /^\s*$/.test(line) || line.startsWith('#')) return;
    open.lines = [...lines.slice(open.from + 1, i + 1)];
    open.to = i + 1;
  });
  return out;
}

/** Entries of a proposed section, each with its lines, indented by two. */
function entriesOf({ inline, lines }: Section): string[][] {
  const flow = /^\[(.*)\]$/.exec(inline);
  if (flow) return flow[1]!.split(',').map((item) => [`  - ${item.trim()}`]);
  const out: string[][] = [];
  for (const l of lines) {
    if (/^ {2}[^ ]/.test(l) || out.length === 0) out.push([l]);
    else out.at(-1)!.push(l);
  }
  return out;
}

/** The name of a map's entry; undefined for an item of a list. */
function nameOf([first = '']: string[]): string | undefined {
  return /^ {2}([^\s:#-][^:]*):/.exec(first)?.[1];
}

function isThere(entry: string[], lines: readonly string[], indent: string): boolean {
  const name = nameOf(entry);
  return name !== undefined && lines.some((l) => l.startsWith(`${indent}${name}:`));
}
