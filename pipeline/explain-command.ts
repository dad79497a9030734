// figureproof explain: how a fact comes about, down to the line; what a check looks for; where a finding stands.
import type { Command } from 'commander';
import { open } from './build.js';
import { exitCodes, UsageError } from './exit-codes.js';
import type { Episodes } from './examine.js';
import { findingFromHere, fromHere, rootOf } from './from-here.js';
import { dataOption } from './options.js';
import { distance, inOrder, nearest, printFinding } from './places/index.js';
import { columnsOf, inkFor } from './terminal.js';
import { printing } from './summary.js';

export function addExplain(program: Command, end: (code: number) => void): void {
  dataOption(program.command('explain').argument('<what>', 'a fact’s id, the name of a check, or the code of a finding'))
    .description('tell how a fact is derived, down to the line of each reading; or what a check looks for and what it found')
    .option('--episode <id>', 'look in this episode only')
    .option('--json', 'print the result as JSON')
    .action(async (what: string, given: { data: string; episode?: string; json?: boolean }) => {
      const { episodes, asked } = open({ data: given.data, only: given.episode ? [given.episode] : [], cache: '.cache' });
      const result = (await explainCheck(what, episodes, asked)) ?? (await explainFact(what, episodes, asked));
      process.stdout.write(`${given.json ? JSON.stringify(result.data, null, 1) : result.text}\n`);
      end(exitCodes.fine.code);
    });
}

interface Explained {
  text: string;
  data: unknown;
}

async function explainFact(id: string, episodes: Episodes, asked: string[]): Promise<Explained> {
  const { explain } = await import('./facts/index.js');
  const found: { episode: string; text: string; data: unknown }[] = [];
  const unknown: { episode: string; text: string; near: number }[] = [];
  for (const episode of asked) {
    const facts = await episodes.facts(episode);
    if (!facts) continue;
    const explanation = explain(facts, id, (file) => fromHere(file, rootOf(episodes.project.data)));
    if (explanation.derivation) found.push({ episode, text: String(explanation), data: { episode, ...explanation.derivation } });
    else unknown.push({ episode, text: String(explanation), near: Math.min(...explanation.nearest.map((n) => distance(id, n))) });
  }
  if (found.length === 0) {
    const [{ checks }, { proofRules }] = await Promise.all([import('./checks/index.js'), import('./proof-rules.js')]);
    const near = nearest(id, [...checks.map((c) => c.name), ...Object.keys(proofRules)]);
    const known = id.includes(':') || id.includes('/');
    if (near && !known) throw new UsageError(`There is no check, finding or fact "${id}"; did you mean "${near}"?`);
    // It was meant for one episode: the others know nothing that is worth telling.
    const least = Math.min(...unknown.map((u) => u.near));
    const meant = unknown.find((u) => u.near === least);
    if (!meant) throw new UsageError(`No record in ${episodes.project.data} can be read.`);
    throw new UsageError(`${unknown.length > 1 ? `No episode has it; ${meant.episode} comes nearest. ` : `In ${meant.episode}: `}${meant.text}`);
  }
  return { text: found.map((f) => (asked.length > 1 ? `${f.episode}\n${f.text}` : f.text)).join('\n\n'), data: found.map((f) => f.data) };
}

/** Undefined where the word is neither the name of a check nor the code of anything found. */
async function explainCheck(name: string, episodes: Episodes, asked: string[]): Promise<Explained | undefined> {
  if (!/^[a-z][a-z0-9-]*$/.test(name)) return undefined;
  const [{ checks, thresholds }, { proofRules }] = await Promise.all([import('./checks/index.js'), import('./proof-rules.js')]);
  const check = checks.find((c) => c.name === name);
  const found = [];
  for (const id of asked) {
    const examined = await episodes.examine(id);
    const own = inOrder(examined.findings.filter((f) => f.code === name));
    if (own.length > 0) found.push({ examined, own });
  }
  const rule = check ? undefined : proofRules[name];
  if (!check && !rule && found.length === 0) return undefined;
  const look = { columns: columnsOf(process.stdout), ink: inkFor(process.stdout) };
  const lines = check
    ? [
        `${look.ink('strong', check.name)} (${check.severity}): ${check.says}`, '', check.why, '',
        ...(check.thresholds ?? []).flatMap((t) => [`threshold ${t}: ${thresholds[t].value} (${thresholds[t].says}; ${thresholds[t].source})`]),
        'Right', ...indented(check.right.record), 'Wrong', ...indented(check.wrong.record), '',
      ]
    : rule ? [`${look.ink('strong', name)} (${rule.severity}): ${rule.says}.`, '', rule.help, ''] : [];
  const options = { data: episodes.project.data };
  lines.push(found.length === 0 ? 'It finds nothing here.' : 'Found here', ...found.flatMap(({ examined, own }) => own.flatMap((f) => ['', ...printFinding(f, printing(examined, options, look))])));
  const { run: _, ...described } = check ?? { run: undefined, ...(rule && { name, ...rule }) };
  return { text: lines.join('\n'), data: { ...described, findings: found.flatMap(({ own }) => own.map((f) => findingFromHere(f, rootOf(options.data)))) } };
}

function indented(text: string): string[] {
  return text.trimEnd().split('\n').map((line) => `  ${line}`);
}
