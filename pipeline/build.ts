// The whole way from records to outputs. Nothing is written before all is examined, and nothing is drawn that stands already.
import { resolve } from 'node:path';
import { Episodes, type Examined, type Project, unknownEpisodes } from './examine.js';
import { UsageError } from './exit-codes.js';
import { Cache, codeVersion, disk, type Disk, episodeIds, hashOf, type Made, manifestName, Output, type Published, readManifest, Standing, template } from './files/index.js';
import { type Finding, type Severity } from './places/index.js';
import type { Card } from './render.js';

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
  stage(name: string, total: number): void;
  step(what: string): void;
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
}

export async function check(options: Options, progress: Progress): Promise<Checked> {
  const { episodes, asked } = open(options);
  return examine(episodes, asked, options, progress);
}

export async function build(options: Options, progress: Progress): Promise<Built> {
  const { project, episodes, asked } = open(options);
  const checked = await examine(episodes, asked, options, progress);
  const nothing = { ...checked, draft: options.draft, drawn: 0, reused: 0 };
  if (checked.fails && !options.draft) return nothing;

  const fs = project.disk;
  const standing = new Standing(resolve(options.out), project.cache, fs);
  const before = readManifest(options.out, fs);
  const stands = (made: Made | undefined, key: string): made is Made =>
    made?.key === key && Object.entries(made.files).every(([path, sha]) => standing.stands(path, sha));
  const keyOf = (e: Examined): string => hashOf(e.key, options.draft);

  const others = options.only.length === 0 ? [] : [...before.keys()].filter((id) => project.ids.includes(id) && !asked.includes(id));
  const kept = new Map<string, Made>(others.map((id) => [id, before.get(id)!]));
  for (const e of checked.examined) {
    const made = before.get(e.id);
    // Without a record nothing can be built of it, not even a draft: what was made earlier stays as it was.
    if (e.ready ? stands(made, keyOf(e)) : made) kept.set(e.id, made!);
  }
  const due = checked.examined.filter((e) => e.ready && !kept.has(e.id));
  const complete = before.size === kept.size + 1 && stands(before.get(''), indexKey([...kept.values()].map((m) => m.card as Card), project.code));
  if (due.length === 0 && complete) {
    standing.remember([...before.values()].flatMap((m) => Object.keys(m.files)));
    return { ...nothing, published: { written: [], unchanged: [...before.values()].flatMap((m) => Object.keys(m.files)).sort(), removed: [], left: [] } };
  }

  const [{ render }, { Studio }, { renderIndex }] = await Promise.all([import('./render.js'), import('./draw.js'), import('./page/index.js')]);
  const output = new Output(options.out, fs, standing);
  try {
    const studio = new Studio(project.cache, project.code);
    const cards = [...kept.values()].map((m) => m.card as Card);
    for (const [id, made] of kept) output.keep(id, made);
    progress.stage('Building', due.length);
    await twoAtATime(due, async (e) => {
      const facts = await episodes.facts(e.id);
      const card = await render(e, facts!, options.draft, studio, (path, content) => output.put(e.id, path, content));
      output.seal(e.id, keyOf(e), card);
      cards.push(card);
      progress.step(e.id);
    });
    cards.sort((a, b) => (a.id < b.id ? -1 : 1));
    output.put('', 'index.html', renderIndex({ cards, draft: cards.some((c) => c.draft), template }));
    output.seal('', indexKey(cards, project.code), undefined);
    const published = output.publish();
    project.cache.prune();
    return { ...checked, published, draft: options.draft, drawn: studio.drawn, reused: studio.reused };
  } finally {
    output.close();
  }
}

/** The same, as it will be told when nothing changes until then. */
export function again<R extends Checked | Built>(result: R): R {
  if (!('published' in result) || !result.published) return result;
  const { written, unchanged } = result.published;
  return { ...result, drawn: 0, reused: 0, published: { written: [], unchanged: [...written, ...unchanged].sort(), removed: [], left: [] } };
}

/** Everything that has to stand in the output folder for the result to hold. */
export function outputsOf({ published }: Built, { out }: Options): string[] {
  return published ? [manifestName, ...published.written, ...published.unchanged].map((path) => resolve(out, path)) : [];
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
  const project: Project = { data: resolve(options.data), ids, cache: new Cache(options.cache, fs), code: codeVersion(fs), disk: fs };
  return { project, episodes: new Episodes(project), asked: options.only.length > 0 ? [...new Set(options.only)].sort() : ids };
}

async function examine(episodes: Episodes, asked: string[], options: Options, progress: Progress): Promise<Checked> {
  progress.stage('Checking', asked.length);
  const examined: Examined[] = [];
  for (const id of asked) {
    examined.push(await episodes.examine(id));
    progress.step(id);
  }
  return { examined, fails: examined.some((e) => e.findings.some((f) => counts(f, options.failOn))) };
}

function indexKey(cards: Card[], code: string): string {
  return hashOf(code, [...cards].sort((a, b) => (a.id < b.id ? -1 : 1)));
}

/** The words of one episode are made while the pictures of another are drawn. */
async function twoAtATime<T>(items: T[], work: (item: T) => Promise<void>): Promise<void> {
  const queue = [...items];
  const worker = async (): Promise<void> => {
    for (let item = queue.shift(); item !== undefined; item = queue.shift()) await work(item);
  };
  await Promise.all([worker(), worker()]);
}
