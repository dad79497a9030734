// Records for tests: read from text, with the places that a finding must have marked in the text itself.
import { Buffer } from 'node:buffer';
import { type Finding, type Lines, Source } from '../../pipeline/places/index.js';
import { assemble, type Episode, outline } from '../../pipeline/records/index.js';
import { expect } from 'vitest';
import { duckdb } from '../logs/duckdb.js';
import { withEngine } from './with-engine.js';

export type Files = Record<string, string | Uint8Array>;

/** With the engine as well, unless it is told not to: a thousand logs take it minutes. */
export function readEpisode(text: string, files: Files = {}, engine = true): { episode: Episode | undefined; findings: Finding[]; sources: Lines[] } {
  const source = new Source('data/example/episode.yaml', text);
  const outlined = outline(source, 'example');
  if (!outlined.value) return { episode: undefined, findings: outlined.findings, sources: [source] };
  const given = new Map(Object.entries(files).map(([path, content]) => [path, typeof content === 'string' ? new Uint8Array(Buffer.from(content)) : content]));
  const assembled = assemble(outlined.value, given);
  // Every log of every test is read with the engine too, where it is installed: nothing may come out otherwise.
  if (engine && duckdb && outlined.value.wants.some((w) => w.as === 'log')) expect(withEngine(source, given, duckdb)).toEqual({ episode: assembled.value, findings: assembled.findings });
  return { episode: assembled.value, findings: [...outlined.findings, ...assembled.findings], sources: [source, ...assembled.sources] };
}

/** The text without its marks ‹ ›, and the spans they enclose as "file:line:column-column" (end exclusive, UTF-16 units). */
export function marked(text: string, file = 'data/example/episode.yaml'): { text: string; spans: string[] } {
  const spans: string[] = [];
  let plain = '';
  let open: { line: number; column: number } | undefined;
  for (const c of text) {
    const before = plain.split('\n');
    const at = { line: before.length, column: before.at(-1)!.length + 1 };
    if (c === '‹') open = at;
    else if (c === '›' && open) {
      spans.push(`${file}:${open.line}:${open.column}-${at.column}`);
      open = undefined;
    } else plain += c;
  }
  return { text: plain, spans };
}

export function spanOf(f: Finding): string {
  return `${f.place.file}:${f.place.line}:${f.place.column}-${f.place.endColumn}`;
}
