// One proof from the command line to the exit code.
import { realpathSync } from 'node:fs';
import { basename, dirname, isAbsolute, relative, sep } from 'node:path';
import { counts } from './build.js';
import { exitCodes, UsageError } from './exit-codes.js';
import { FileTrouble, Folder, tell, wholeGiven } from './files/index.js';
import { findingFromHere, fromHere } from './from-here.js';
import { decode } from './logs/index.js';
import { comparePlaces, type Finding, harmless, type Lines, type PrintOptions, type Severity, Source } from './places/index.js';
import { type Proofed, proofJson, proofScript } from './proof.js';
import { type Against, type Asked, factsFor } from './proof-facts.js';
import { notProofed, unreadable } from './proof-texts.js';
import { columnsOf, inkFor } from './terminal.js';

export interface Given extends Asked {
  json?: boolean;
  sarif?: boolean;
  explain?: string;
  apply?: boolean;
  failOn: Severity;
}

export async function runProof(path: string, given: Given): Promise<number> {
  const line = lineAsked(given);
  const bytes = readBytes(path);
  const against = await factsFor(realpath(path), given, (table) => {
    const { value, findings } = decode(named(table, process.cwd()), readBytes(table));
    return value ?? findings;
  });
  const { value: script, findings: broken } = decode(named(path, against.root), bytes);
  const sources = [...against.sources, ...(script ? [script] : [])];
  const print = printing(sources, against.root);
  if (!script || !against.facts) return told({ mentions: [], findings: broken, spoken: new Source('', ''), bound: false }, against, given, print);
  if (line !== undefined) {
    const { explainLine } = await import('./proof-explain.js');
    process.stdout.write(`${(await explainLine(script, against.facts, line, print)).join('\n')}\n`);
    return exitCodes.fine.code;
  }
  const unread = unreadable(against.findings);
  if (given.apply && unread.length > 0) process.stderr.write(`Nothing is written into ${path}: what it is proofed against cannot be read whole.\n`);
  if (against.episode && unread.length > 0) return told({ mentions: [], findings: [notProofed(unread, against.episode.id)], spoken: script, bound: false }, { ...against, facts: undefined }, given, print);
  const proofed = await weighed(await proofScript(script, against.facts), against);
  if (given.apply && unread.length === 0) {
    const { applySuggestions } = await import('./proof-apply.js');
    const changed = applySuggestions(realpath(path), bytes, script, proofed, print);
    if (!given.json && !given.sarif) process.stdout.write(`${changed.lines.join('\n')}\n`);
    if (changed.script) return told(await weighed(await proofScript(changed.script, against.facts), against), against, given, printing([...against.sources, changed.script], against.root));
  }
  return told(proofed, against, given, print);
}

/** Acceptances and severities of the record hold here as in check. */
async function weighed(proofed: Proofed, { episode }: Against): Promise<Proofed> {
  if (!episode || (episode.accept.length === 0 && episode.severities.length === 0)) return proofed;
  const { weigh } = await import('./checks/index.js');
  return { ...proofed, findings: weigh(proofed.findings, episode) };
}

async function told(proofed: Proofed, against: Against, given: Given, print: PrintOptions): Promise<number> {
  const findings = [...against.findings, ...proofed.findings].sort((a, b) => comparePlaces(a.place, b.place));
  const failing = findings.filter((f) => counts(f, given.failOn)).length;
  const text = given.json ? JSON.stringify(proofJson({ mentions: proofed.mentions, findings: findings.map((f) => findingFromHere(f, against.root)) }), null, 1)
    : given.sarif ? await asSarif(findings, print)
    : (await report({ ...proofed, findings }, against, given, print, failing)).join('\n');
  process.stdout.write(`${text}\n`);
  return failing > 0 ? exitCodes.findings.code : exitCodes.fine.code;
}

async function report(proofed: Proofed, { facts }: Against, given: Given, print: PrintOptions, failing: number): Promise<string[]> {
  const { proofReport } = await import('./proof-report.js');
  return proofReport({ findings: proofed.findings, mentions: proofed.mentions, facts, cues: /^\uFEFF?WEBVTT/.test(proofed.spoken.text), alone: given.alone ?? false }, print, failing);
}

async function asSarif(findings: readonly Finding[], print: PrintOptions): Promise<string> {
  const { sarifText } = await import('./sarif-text.js');
  return sarifText(findings, print);
}

function lineAsked({ explain, json, sarif, apply }: Given): number | undefined {
  if (json && sarif) throw new UsageError('--json and --sarif exclude each other.');
  if (explain === undefined) return undefined;
  if (apply || json || sarif) throw new UsageError('--explain tells about one line and does nothing else.');
  if (!/^[1-9]\d{0,8}$/.test(explain)) throw new UsageError(`--explain takes the number of a line, not "${explain}".`);
  return Number(explain);
}

function readBytes(path: string): Uint8Array {
  const real = realpath(path);
  const given = wholeGiven(new Folder(dirname(real)).read(basename(real)));
  if ('error' in given) throw new FileTrouble('read', path, given.error);
  return given;
}

function realpath(path: string): string {
  return tell('read', path, () => realpathSync(path));
}

/** The name under which findings speak of a file: from the root on where it lies below it, else its whole path. */
function named(path: string, root: string): string {
  const real = realpath(path);
  const below = relative(realpath(root), real);
  return below.startsWith('..') || isAbsolute(below) ? real : below.split(sep).join('/');
}

function printing(sources: readonly Lines[], root: string): PrintOptions {
  const byFile = new Map(sources.map((s) => [s.file, s]));
  return {
    columns: columnsOf(process.stdout), ink: inkFor(process.stdout),
    line: (file, line) => byFile.get(file)?.line(line),
    path: (file) => harmless(fromHere(file, root)),
  };
}
