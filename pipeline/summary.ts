// What check and build say in the end, for a person and as JSON.
import { join } from 'node:path';
import type { Built, Checked, Options } from './build.js';
import { counts } from './build.js';
import { exitCodes } from './exit-codes.js';
import type { Examined } from './examine.js';
import { findingFromHere, fromHere, rootOf } from './from-here.js';
import { nextCommand } from './next-command.js';
import { type Finding, type Ink, inOrder, padEnd, padStart, type PrintOptions, printFinding, harmless, width, worstLast, wrap } from './places/index.js';

export interface Look {
  columns: number;
  ink: (ink: Ink, text: string) => string;
}

/** Lines for a person: every finding with its line, a table of the episodes, and what comes next. */
export function summary(result: Checked | Built, options: Options, look: Look): string[] {
  const findings = result.examined.flatMap((e) => e.findings);
  const print = { ...look, ...printingAll(result.examined, options), acceptable: true };
  const shown = worstLast(findings);
  return [
    ...shown.flatMap((f, i) => [...printFinding(f, print, shown[i - 1]?.accepted ? undefined : shown[i - 1]), '']),
    ...table(result.examined, look),
    '',
    ...closing(result, findings, options, look).flatMap((line) => wrap(line, look.columns)),
  ];
}

export function asJson(result: Checked | Built, options: Options): object {
  const built = 'draft' in result ? { draft: result.draft, out: options.out, built: result.published !== undefined, ...result.published, pictures: { drawn: result.drawn, reused: result.reused, moved: result.moved } } : {};
  const exit = result.fails ? exitCodes.findings.code : exitCodes.fine.code;
  return { exit, ...built, episodes: result.examined.map(({ id, title, ready, counts: c, findings }) => ({ id, title, ready, ...c, findings: inOrder(findings).map((f) => findingFromHere(f, rootOf(options.data))) })) };
}

export function printing(examined: Examined, options: Pick<Options, 'data'>, look: Look): PrintOptions {
  return { ...look, ...printingAll([examined], options) };
}

/** Paths as the person would type them here. */
export function printingAll(examined: readonly Examined[], { data }: Pick<Options, 'data'>): Pick<PrintOptions, 'line' | 'path'> {
  const lines = new Map(examined.flatMap((e) => Object.entries(e.lines)));
  return { line: (file, line) => lines.get(`${file}:${line}`), path: (file) => harmless(fromHere(file, rootOf(data))) };
}

function table(examined: Examined[], { ink, columns }: Look): string[] {
  const head = ['episode', 'readings', 'facts', 'pictures', 'said', 'found'];
  const rows = examined.map((e) => {
    const open = e.findings.filter((f) => !f.accepted);
    const of = (severity: Finding['severity']): number => open.filter((f) => f.severity === severity).length;
    const found = [[of('error'), 'error'], [of('warning'), 'warning'], [of('note'), 'note']] as const;
    const accepted = e.findings.length - open.length;
    return [
      harmless(e.id), String(e.counts.readings), String(e.counts.facts), String(e.counts.pictures), e.counts.mentions ? `${e.counts.agreed} of ${e.counts.mentions}` : '',
      [...found.filter(([n]) => n > 0).map(([n, what]) => plural(n, what)), ...(accepted > 0 ? [`${accepted} accepted`] : [])].join(', '),
    ];
  });
  const widths = head.map((_, i) => Math.max(...[head, ...rows].map((r) => width(r[i]!))));
  const used = head.map((_, i) => i < 4 || rows.some((r) => r[i] !== ''));
  // In a narrow terminal the least telling columns go first.
  for (const name of ['pictures', 'readings', 'facts', 'said']) {
    if (widths.reduce((sum, w, i) => (used[i] ? sum + w + 2 : sum), -2) > columns) used[head.indexOf(name)] = false;
  }
  const left = (i: number): boolean => i === 0 || i === head.length - 1;
  const line = (row: string[]): string => row.map((cell, i) => (left(i) ? padEnd(cell, widths[i]!) : padStart(cell, widths[i]!))).filter((_, i) => used[i]).join('  ').trimEnd();
  return [ink('faint', line(head)), ...rows.map(line)];
}

function closing(result: Checked | Built, findings: Finding[], options: Options, { ink }: Look): string[] {
  const stopping = findings.filter((f) => counts(f, options.failOn)).length;
  const verdict = stopping > 0
    ? ink('error', `${plural(stopping, 'finding')} ${stopping === 1 ? 'counts' : 'count'} as ${stopping === 1 ? 'an error' : 'errors'}.`)
    : ink('good', findings.length === 0 ? 'Nothing found.' : 'Nothing found that counts as an error.');
  if (!('draft' in result)) return [verdict];
  const { published } = result;
  if (!published) return [verdict, `Nothing was built; what stands in ${options.out} is as it was. To see a draft all the same: ${nextCommand(['build', ...options.only, '--draft'], { data: options.data, out: options.out })}`];
  const parts = [`${plural(published.written.length, 'file')} written`, `${published.unchanged.length} unchanged`];
  if (published.removed.length > 0) parts.push(`${published.removed.length} removed`);
  const lines = [verdict, `${result.draft ? 'A draft' : 'Built'} in ${options.out}: ${parts.join(', ')}.`];
  if (result.drawn + result.reused > 0) lines.push(`${plural(result.drawn, 'picture')} drawn, ${result.reused} taken from the cache.`);
  if (result.moved > 0) lines.push(`${plural(result.moved, 'moving picture')} made.`);
  if (published.left.length > 0) lines.push(`Left alone, because changed by hand since: ${published.left.join(', ')}.`);
  const unready = result.examined.filter((e) => !e.ready).map((e) => e.id);
  if (unready.length > 0) lines.push(`Not built, because the record cannot be read: ${unready.join(', ')}.`);
  return [...lines, `Look at ${join(options.out, 'index.html')}`];
}

function plural(n: number, one: string): string {
  return `${n} ${one}${n === 1 ? '' : 's'}`;
}
