// The whole way from records to outputs. Nothing is written before all is examined, and nothing is drawn that stands already.
import { resolve } from 'node:path';
import { Studio } from './draw.js';
import { MovingStudio } from './moving.js';
import { indexKey, keyOf, sortOut } from './due.js';
import { Episodes, type Examined, type Project, unknownEpisodes } from './examine.js';
import { UsageError } from './exit-codes.js';
import { Cache, clearLeftovers, codeVersion, disk, type Disk, episodeIds, findDuckdb, findTool, lockName, manifestName, Output, type Published, readManifest, stagingName, Standing, template, tooNear } from './files/index.js';
import { type Finding, type Severity } from './places/index.js';
import type { Card, Draft } from './render.js';

export interface Options {
  data: string;
  out: string;
  /** Folder for work done before; none for no cache. */
  cache?: string;
  /** Episodes asked for; none for all. */
  only: string[];
  draft: boolean;
  failOn: Severity;
  disk?: Disk;
}

/** Told as the work goes on. */
export interface Progress {
  /** What is about to be done, how many times and to what. */
  stage(name: string, total: number, what: string): void;
  step(what: string): void;
  /** What is in hand from now on, where it takes time; `step` follows. */
  begin(what: string): void;
}

export interface Checked {
  examined: Examined[];
  /** Whether something found counts as an error. */
  fails: boolean;
}

export interface Built extends Checked {
  /** Undefined where nothing was built. */
  published?: Published;
  draft: boolean;
  drawn: number;
  reused: number;
  /** Moving pictures made anew, one for each size. */
  moved: number;
}

export async function check(options: Options, progress: Progress): Promise<Checked> {
  const { episodes, asked } = open(options);
  return examine(episodes, asked, options, progress);
}

export async function build(options: Options, progress: Progress): Promise<Built> {
  const { project, asked } = open(options);
  const near = tooNear(options.out, options.data, project.ids, project.disk);
  if (near) throw new UsageError(near);
  const studio = new Studio(project.cache, project.code, (stem) => progress.step(stem));
  const episodes = new Episodes(project, (plan) => studio.ahead(plan, options.draft));
  const checked = await examine(episodes, asked, options, progress);
  const nothing = { ...checked, draft: options.draft, drawn: 0, reused: 0, moved: 0 };
  if (checked.fails && !options.draft) {
    studio.stop();
    return nothing;
  }

  const standing = new Standing(resolve(options.out), project.cache, project.disk);
  const before = readManifest(options.out, project.disk);
  const { due, kept, complete } = sortOut(checked.examined, before, standing, project, options);
  if (complete) {
    clearLeftovers(options.out, project.disk);
    const unchanged = [...before.values()].flatMap((m) => Object.keys(m.files)).sort();
    standing.remember(unchanged);
    return { ...nothing, published: { written: [], unchanged, removed: [], left: [] } };
  }

  const [{ render }, { renderIndex }] = await Promise.all([import('./render.js'), import('./page/index.js')]);
  const motion = new MovingStudio(project.cache, project.code);
  const output = new Output(options.out, project.disk, standing);
  try {
    const cards = [...kept.values()].map((m) => m.card as Card);
    for (const [id, made] of kept) output.keep(id, made);
    progress.stage('Drawing', due.reduce((sum, e) => sum + e.counts.pictures, 0), 'picture');
    await twoAtATime(due, async (e) => {
      progress.begin(e.id);
      const card = await render(e, (await episodes.facts(e.id))!, stamp(e, options), studio, motion, (path, content) => output.put(e.id, path, content));
      output.seal(e.id, keyOf(e, options), card);
      cards.push(card);
    });
    cards.sort((a, b) => (a.id < b.id ? -1 : 1));
    output.put('', 'index.html', renderIndex({ cards, draft: cards.some((c) => c.draft), unsound: cards.some((c) => c.unsound), template }));
    output.seal('', indexKey(cards, project), undefined);
    const published = output.publish();
    project.cache.prune();
    return { ...checked, published, draft: options.draft, drawn: studio.drawn, reused: studio.reused, moved: motion.made };
  } finally {
    studio.stop();
    output.close();
  }
}

/** The same, as it will be told when nothing changes until then. */
export function again<R extends Checked | Built>(result: R): R {
  if (!('published' in result) || !result.published) return result;
  const { written, unchanged } = result.published;
  return { ...result, drawn: 0, reused: 0, moved: 0, published: { written: [], unchanged: [...written, ...unchanged].sort(), removed: [], left: [] } };
}

/** Everything that has to stand in the output folder for the result to hold, and what must not: a killed build's leftovers. */
export function outputsOf({ published }: Built, { out }: Options): string[] {
  return published ? [manifestName, lockName, stagingName, ...published.written, ...published.unchanged].map((path) => resolve(out, path)) : [];
}

/** Why the outputs of an episode are a draft: for what stands wrong in it, or only because one was asked for. */
function stamp({ findings }: Examined, { draft, failOn }: Options): Draft | undefined {
  return !draft ? undefined : findings.some((f) => counts(f, failOn)) ? 'unsound' : 'asked';
}

/** Whether a finding counts as an error; an accepted one never does. */
export function counts(finding: Finding, failOn: Severity): boolean {
  const weight = { error: 2, warning: 1, note: 0 };
  return !finding.accepted && weight[finding.severity] >= weight[failOn];
}

export function open(options: Pick<Options, 'data' | 'cache' | 'only' | 'disk'>): { project: Project; episodes: Episodes; asked: string[] } {
  const fs = options.disk ?? disk;
  const ids = episodeIds(options.data, fs);
  const unknown = unknownEpisodes(options.only, ids);
  if (unknown.length > 0) throw new UsageError(unknown.map(({ id, near }) => `There is no episode "${id}" in ${options.data}${near ? `; did you mean "${near}"?` : '.'}`).join('\n'));
  const project: Project = { data: resolve(options.data), ids, cache: new Cache(options.cache, fs), code: codeVersion(fs), tools: `${findTool('ffmpeg') === undefined ? '' : 'ffmpeg'}${findDuckdb() === undefined ? '' : ' duckdb'}`, disk: fs };
  return { project, episodes: new Episodes(project), asked: options.only.length > 0 ? [...new Set(options.only)].sort() : ids };
}

async function examine(episodes: Episodes, asked: string[], options: Options, progress: Progress): Promise<Checked> {
  progress.stage('Checking', asked.length, 'episode');
  const examined: Examined[] = [];
  for (const id of asked) {
    examined.push(await episodes.examine(id, () => progress.begin(id)));
    progress.step(id);
  }
  return { examined, fails: examined.some((e) => e.findings.some((f) => counts(f, options.failOn))) };
}

/** The words of one episode are made while the pictures of another are drawn. */
async function twoAtATime<T>(items: T[], work: (item: T) => Promise<void>): Promise<void> {
  const queue = [...items];
  const worker = async (): Promise<void> => {
    for (let item = queue.shift(); item !== undefined; item = queue.shift()) await work(item);
  };
  await Promise.all([worker(), worker()]);
}
