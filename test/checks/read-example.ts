// An example of a check, or an episode's folder, read the way the build reads it.
import { Buffer } from 'node:buffer';
import { Facts } from '../../pipeline/facts/index.js';
import { type Finding, Source } from '../../pipeline/places/index.js';
import { assemble, type Episode, outline } from '../../pipeline/records/index.js';

export interface ReadRecord {
  episode: Episode;
  facts: Facts;
  /** What the reader itself found. */
  findings: Finding[];
}

export function readRecord(record: string, files: Record<string, string | Uint8Array> = {}, id = 'example'): ReadRecord {
  const outlined = outline(new Source(`data/${id}/episode.yaml`, record), id);
  if (!outlined.value) throw new Error(`cannot be read: ${told(outlined.findings)}`);
  const given = new Map(Object.entries(files).map(([name, text]) => [name, typeof text === 'string' ? Buffer.from(text) : text]));
  const assembled = assemble(outlined.value, given);
  if (!assembled.value) throw new Error(`cannot be read: ${told([...outlined.findings, ...assembled.findings])}`);
  return { episode: assembled.value, facts: new Facts(assembled.value), findings: [...outlined.findings, ...assembled.findings] };
}

export function told(findings: readonly Finding[]): string {
  return findings.map((f) => `${f.place.file}:${f.place.line}:${f.place.column} ${f.severity} ${f.code} ${f.message} [${f.subject ?? ''}]`).join('\n');
}

/** Lines that end with `# expect`, or with `# expect: CODE CODE`. */
export function expected(record: string, file: string): { at: string; codes: string[] }[] {
  return record.split('\n').flatMap((line, i) => {
    const mark = /# expect(?:: (.*))?$/.exec(line.trimEnd());
    return mark ? [{ at: `${file}:${i + 1}`, codes: mark[1]?.split(/\s+/) ?? [] }] : [];
  });
}
