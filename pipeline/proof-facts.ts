// What a script is proofed against: the nearest record above it, another episode, two tables, or nothing but itself.
import { existsSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { open } from './build.js';
import { UsageError } from './exit-codes.js';
import { unreadable } from './proof-texts.js';
import { type Given, recordName } from './files/index.js';
import { rootOf } from './from-here.js';
import { Facts } from './facts/index.js';
import type { Finding, Lines, Source } from './places/index.js';
import { bareEpisode, readNames, readReadings } from './records/index.js';
import type { Episode } from './records/index.js';

export interface Against {
  /** Undefined where the record cannot be read. */
  facts: Facts | undefined;
  /** Undefined for tables and for a script alone. */
  episode?: Episode;
  /** What was found in reading; of a record its errors that count, and while there is one nothing is proofed against it. */
  findings: Finding[];
  sources: Lines[];
  /** Folder that the names of files in findings start from. */
  root: string;
}

export interface Asked {
  readings?: string;
  names?: string;
  episode?: string;
  alone?: boolean;
  data: string;
}

export async function factsFor(script: string, asked: Asked, read: (path: string) => Source | Finding[]): Promise<Against> {
  const ways = [asked.readings !== undefined && '--readings', asked.episode !== undefined && '--episode', asked.alone && '--alone'].filter((w) => w !== false && w !== undefined);
  if (ways.length > 1) throw new UsageError(`${ways.join(' and ')} exclude each other: a script is proofed against one thing.`);
  if (asked.names !== undefined && asked.readings === undefined) throw new UsageError('--names tells how the things of a table are spoken; name the table with --readings.');
  if (asked.alone) return { facts: bare([], []), findings: [], sources: [], root: process.cwd() };
  if (asked.readings !== undefined) return fromTables(asked.readings, asked.names, read);
  if (asked.episode !== undefined) return fromEpisode(asked.data, asked.episode);
  const folder = nearestRecord(resolve(script));
  if (folder === undefined) throw new UsageError(`No ${recordName} stands beside ${script} or in a folder above it. Name an episode with --episode, tables with --readings and --names, or let the script be checked against itself with --alone.`);
  return fromEpisode(dirname(folder), basename(folder));
}

function nearestRecord(script: string): string | undefined {
  for (let at = dirname(script); ; at = dirname(at)) {
    if (existsSync(join(at, recordName))) return at;
    if (dirname(at) === at) return undefined;
  }
}

function fromTables(readings: string, names: string | undefined, read: (path: string) => Source | Finding[]): Against {
  const findings: Finding[] = [];
  const sources = [readings, names].map((path) => {
    const source = path === undefined ? undefined : read(path);
    if (Array.isArray(source)) findings.push(...source);
    else if (source) return source;
    return undefined;
  });
  const [table, spoken] = sources;
  const rows = table && readReadings(table, { alone: true });
  const words = spoken && readNames(spoken, { alone: true });
  findings.push(...(rows?.findings ?? []), ...(words?.findings ?? []));
  const facts = rows?.value && (names === undefined || words?.value) ? bare(rows.value, words?.value ?? [], table) : undefined;
  return { facts, findings, sources: sources.filter((s) => s !== undefined), root: process.cwd() };
}

function bare(readings: Parameters<typeof bareEpisode>[0], names: Parameters<typeof bareEpisode>[1], table?: Source): Facts {
  return new Facts(bareEpisode(readings, names, table?.wholeLine(1) ?? { file: '', line: 1, column: 1, endLine: 1, endColumn: 1 }));
}

async function fromEpisode(data: string, id: string): Promise<Against> {
  const { project, episodes } = open({ data, only: [id], cache: undefined });
  const { facts, episode, findings, sources } = await episodes.read(id);
  const { weigh } = await import('./checks/index.js');
  return { facts, ...(episode && { episode }), findings: unreadable(episode ? weigh(findings, episode) : findings), sources, root: rootOf(project.data) };
}

export type { Given };
