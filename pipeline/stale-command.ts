// figureproof stale: which pictures of a folder, wherever they were copied to, no longer show what the records say.
import { join } from 'node:path';
import type { Command } from 'commander';
import { open } from './build.js';
import { madeFrom } from './contact.js';
import { type PlannedPicture, planPictures } from './draw.js';
import { exitCodes, UsageError } from './exit-codes.js';
import { disk, tell } from './files/index.js';
import { type Facts, isFact } from './facts/index.js';
import { dataOption } from './options.js';

interface Kept {
  file: string;
  name: string;
  episode: string;
  from: string;
  facts: { id: string; shown: string }[];
}

export function addStale(program: Command, end: (code: number) => void): void {
  dataOption(program.command('stale').argument('<folder>', 'a folder with pictures and the .json that was made beside each'))
    .description('tell which pictures of a folder no longer show what the records say, and what has changed in them')
    .option('--json', 'print the result as JSON')
    .action(async (folder: string, given: { data: string; json?: boolean }) => {
      const kept = picturesIn(folder);
      if (kept.length === 0) throw new UsageError(`There is no picture's .json in ${folder}; copy NN-NAME.json along with the picture.`);
      const { episodes, project } = open({ data: given.data, only: [], cache: '.cache' });
      const told: { file: string; stale: boolean; why: string }[] = [];
      const plans = new Map<string, { facts: Facts; pictures: PlannedPicture[] } | undefined>();
      for (const k of kept) {
        if (!plans.has(k.episode)) {
          const facts = project.ids.includes(k.episode) ? await episodes.facts(k.episode) : undefined;
          plans.set(k.episode, facts && { facts, pictures: (await planPictures(facts)).pictures });
        }
        const why = whyStale(k, plans.get(k.episode));
        told.push({ file: join(folder, k.file), stale: why !== undefined, why: why ?? 'shows what the record says' });
      }
      const stale = told.filter((t) => t.stale);
      const lines = [...stale.map((t) => `${t.file}: ${t.why}`), `${stale.length} of ${told.length} picture${told.length === 1 ? '' : 's'} stale.`];
      process.stdout.write(`${given.json ? JSON.stringify(told, null, 1) : lines.join('\n')}\n`);
      end(stale.length > 0 ? exitCodes.findings.code : exitCodes.fine.code);
    });
}

function picturesIn(folder: string): Kept[] {
  return tell('read', folder, () => disk.readdirSync(folder)).filter((n) => n.endsWith('.json')).sort().flatMap((file) => {
    try {
      const k = JSON.parse(disk.readFileSync(join(folder, file), 'utf8')) as Partial<Kept>;
      return typeof k.name === 'string' && typeof k.episode === 'string' && typeof k.from === 'string' && Array.isArray(k.facts) ? [{ ...(k as Kept), file }] : [];
    } catch {
      // Some other file.
      return [];
    }
  });
}

function whyStale(kept: Kept, plan: { facts: Facts; pictures: PlannedPicture[] } | undefined): string | undefined {
  if (!plan) return `there is no episode "${kept.episode}" that can be read`;
  const now = plan.pictures.find((p) => p.sheets[0]!.prepared.name === kept.name);
  if (now && madeFrom(now) === kept.from) return undefined;
  const changed = kept.facts.flatMap(({ id, shown }) => {
    const fact = plan.facts.get(id);
    return isFact(fact) ? (fact.shown === shown ? [] : [`${id} is ${fact.shown} now, and was ${shown}`]) : [`${id} (${shown}) is no longer known`];
  });
  if (changed.length > 0) return changed.join('; ');
  return now ? 'its figures stand, but it would look otherwise now' : 'it is no longer made, though its figures stand';
}
