// Episodes from their folders to what is found in them: record, facts, checks, proof of the texts. What was found before is
// remembered with the hash of all that it rests on, and taken from there as long as that has not changed.
import { basename, join } from 'node:path';
import { type Cache, type Disk, findDuckdb, Folder, type Given, hashGiven, hashOf, isPattern, recordName, template, wholeGiven } from './files/index.js';
import { type Finding, type Lines, nearest, type Place, type Source } from './places/index.js';
import { nothingRead } from './nothing-to-tell.js';
import { proofTexts, unreadable, withoutTexts } from './proof-texts.js';
import type { Plan } from './draw.js';
import type { Facts } from './facts/index.js';
import type { Said } from './told.js';
import type { Episode, Outline } from './records/index.js';

export interface Project {
  /** The folder that holds one folder an episode. */
  data: string;
  ids: string[];
  cache: Cache;
  /** Hash of the program; what other code remembered does not count. */
  code: string;
  /** Which other programs are there to be used: what is found and made depends on it. */
  tools: string;
  disk: Disk;
}

/** What is known of an episode once it is examined; plain data, so that it can be remembered. */
export interface Examined {
  id: string;
  /** Hash of all that this rests on: the program, the episode's files, and those of the episodes it quotes. */
  key: string;
  /** Whether the record could be read; without it nothing can be built. */
  ready: boolean;
  title: string;
  counts: { readings: number; facts: number; mentions: number; agreed: number; pictures: number };
  /** Ids of the facts that its texts speak of. */
  claimed: string[];
  /** Where in its script facts are first said. */
  said: Said;
  findings: Finding[];
  /** The lines that findings speak of, by `file:line`, for printing. */
  lines: Record<string, string>;
}

/** The record's YAML alone. */
interface Outlined {
  source?: Source;
  outline?: Outline;
  findings: Finding[];
}

interface Opened {
  episode: Episode | undefined;
  findings: Finding[];
  sources: Lines[];
}

/** The episode with its quotes filled in, and its facts. */
export interface Derived {
  episode: Episode | undefined;
  facts: Facts | undefined;
  findings: Finding[];
}

interface Remembered {
  code: string;
  record: string;
  wants: string[];
  inputs: string;
  quotes: string[];
  examined: Examined;
}

type Whole = ReturnType<typeof wholeGiven>;

interface Looked {
  /** The record and the files it wants; read again when needed, so that unchanged logs are not held. */
  read(): { record: Whole; given: Map<string, Given> };
  record: string;
  wants: string[];
  inputs: string;
  /** What was remembered, if it was made from the same files by the same program. */
  known: Remembered | undefined;
}

export class Episodes {
  readonly project: Project;
  readonly #planned: ((plan: Plan) => void) | undefined;
  readonly #looked = new Map<string, Promise<Looked>>();
  readonly #outlined = new Map<string, Outlined>();
  readonly #opened = new Map<string, Promise<Opened>>();
  readonly #facts = new Map<string, Promise<Derived>>();

  /** `planned` hears of the pictures of each episode as soon as it is known that they can be drawn. */
  constructor(project: Project, planned?: (plan: Plan) => void) {
    this.project = project;
    this.#planned = planned;
  }

  /** `begun` is called where it is not known from before, and so takes time. */
  async examine(id: string, begun?: () => void): Promise<Examined> {
    const looked = await this.#look(id);
    const key = await this.#key(id);
    if (looked.known?.examined.key === key) return looked.known.examined;
    begun?.();
    const examined = await this.#examine(id, key);
    const quotes = await this.#quotes(id);
    const remembered: Remembered = { code: this.project.code, record: looked.record, wants: looked.wants, inputs: looked.inputs, quotes, examined };
    this.project.cache.remember('episodes', id, remembered);
    return examined;
  }

  /** The facts of an episode, its quotes filled in; undefined where its record cannot be read. */
  async facts(id: string): Promise<Facts | undefined> {
    return (await this.#factsOf(id)).facts;
  }

  /** An episode as it is read, with what was found in reading it; no check is run. */
  async read(id: string): Promise<Derived & { sources: Lines[] }> {
    const { findings, sources } = await this.#open(id);
    const derived = await this.#factsOf(id);
    return { ...derived, findings: [...findings, ...derived.findings], sources };
  }

  /** The name under which findings speak of an episode's file. */
  fileName(id: string, name: string): string {
    return `${basename(this.project.data)}/${id}/${name}`;
  }

  async #examine(id: string, key: string): Promise<Examined> {
    const opened = await this.#open(id);
    const { episode, facts, findings } = await this.#factsOf(id);
    const all = [...opened.findings, ...findings];
    const counts = { readings: episode?.readings.length ?? 0, facts: 0, mentions: 0, agreed: 0, pictures: 0 };
    const claimed: string[] = [];
    let said: Said = [];
    if (episode && facts) {
      const [{ runChecks, weigh }, { planPictures }, { storedFacts }] = await Promise.all([import('./checks/index.js'), import('./draw.js'), import('./render.js')]);
      const plan = await planPictures(facts);
      this.#planned?.(plan);
      await breathe();
      const unread = unreadable(weigh(all, episode));
      const proofed = await proofTexts(episode, opened.sources, facts, unread);
      await breathe();
      // Acceptances and severities of the record hold for all findings, whoever found them.
      all.splice(0, all.length, ...runChecks(unread.length > 0 ? withoutTexts(episode) : episode, facts, [...all, ...nothingRead(episode, unread), ...proofed.findings, ...plan.findings]));
      const { length } = await storedFacts(facts, proofed.claimed);
      Object.assign(counts, { facts: length, mentions: proofed.mentions, agreed: proofed.agreed, pictures: plan.pictures.length });
      claimed.push(...proofed.claimed);
      said = proofed.said;
    }
    return { id, key, ready: facts !== undefined, title: episode?.title ?? id, counts, claimed, said, findings: all, lines: linesOf(all, opened.sources) };
  }

  #look(id: string): Promise<Looked> {
    return once(this.#looked, id, async () => {
      const folder = new Folder(join(this.project.data, id), this.project.disk);
      const beside = new Folder(this.project.data, this.project.disk);
      const record = wholeGiven(folder.read(recordName));
      const recordHash = hashGiven(record);
      const kept = this.project.cache.recall<Remembered>('episodes', id);
      const usable = kept?.code === this.project.code && kept.record === recordHash ? kept : undefined;
      const wants = usable?.wants ?? (await this.#wants(id, record));
      const given = readAll(folder, wants, beside);
      const inputs = hashOf(id, recordHash, wants, [...given].map(([name, g]) => [name, 'error' in g ? g : hashGiven(g)]));
      const known = usable?.inputs === inputs ? usable : undefined;
      let first = known ? undefined : { record, given };
      const read = (): { record: Whole; given: Map<string, Given> } => {
        const files = first ?? { record, given: readAll(folder, wants, beside) };
        first = undefined;
        return files;
      };
      return { read, record: recordHash, wants, inputs, known };
    });
  }

  async #wants(id: string, record: Whole): Promise<string[]> {
    const outlined = await this.#outline(id, record);
    this.#outlined.set(id, outlined);
    return outlined.outline?.wants.map((w) => w.path) ?? [];
  }

  async #outline(id: string, record: Whole): Promise<Outlined> {
    const file = this.fileName(id, recordName);
    if ('error' in record) {
      return { findings: [{ code: 'record-unreadable', severity: 'error', place: top(file), subject: id, message: `the record cannot be read: ${record.error}` }] };
    }
    const [{ outline }, { decode }] = await Promise.all([import('./records/index.js'), import('./logs/index.js')]);
    const { value: source, findings } = decode(file, record);
    if (!source) return { findings };
    const outlined = outline(source, id);
    return { source, findings: outlined.findings, ...(outlined.value && { outline: outlined.value }) };
  }

  #open(id: string): Promise<Opened> {
    return once(this.#opened, id, async () => {
      const { record, given } = (await this.#look(id)).read();
      const { source, outline, findings } = this.#outlined.get(id) ?? (await this.#outline(id, record));
      // An outline can be assembled once.
      this.#outlined.delete(id);
      const sources: Lines[] = source ? [source] : [];
      if (!outline) return { episode: undefined, findings, sources };
      const { assemble } = await import('./records/index.js');
      const assembled = assemble(outline, given, template, findDuckdb());
      return { episode: assembled.value, findings: [...findings, ...assembled.findings], sources: [...sources, ...assembled.sources] };
    }, mostHeld);
  }

  #factsOf(id: string): Promise<Derived> {
    return once(this.#facts, id, async () => {
      const { episode } = await this.#open(id);
      if (!episode) return { episode, facts: undefined, findings: [] };
      const { Facts, isFact, suggestIds, uncertaintyOf, withQuotes } = await import('./facts/index.js');
      const others = new Map<string, Facts | 'cycle' | undefined>();
      for (const { episode: other } of episode.quotes) {
        if (this.project.ids.includes(other)) others.set(other, (await this.#reachable(other)).has(id) ? 'cycle' : await this.facts(other));
      }
      const quoted = withQuotes(episode, (other, fact) => {
        if (!others.has(other)) return { missing: 'episode', nearest: nearest(other, this.project.ids) };
        const from = others.get(other);
        if (from === 'cycle') return { missing: 'cycle' };
        const found = from?.get(fact);
        return isFact(found) ? found : { missing: 'fact', nearest: from && suggestIds(from, fact)[0] };
      }, (other, fact) => {
        const from = others.get(other);
        const u = from && from !== 'cycle' ? uncertaintyOf(from, fact) : undefined;
        return u && { standard: u.standard, dof: u.dof };
      });
      return { ...quoted, facts: new Facts(quoted.episode) };
    }, mostHeld);
  }

  /** All episodes that this one's facts may rest on, itself included. */
  async #reachable(id: string): Promise<Set<string>> {
    const seen = new Set<string>([id]);
    for (const at of seen) for (const next of await this.#quotes(at)) seen.add(next);
    return seen;
  }

  async #quotes(id: string): Promise<string[]> {
    if (!this.project.ids.includes(id)) return [];
    const { known } = await this.#look(id);
    return known?.quotes ?? [...new Set((await this.#open(id)).episode?.quotes.map((q) => q.episode))];
  }

  async #key(id: string): Promise<string> {
    const rests: [string, string][] = [];
    for (const other of [...(await this.#reachable(id))].sort()) {
      rests.push([other, this.project.ids.includes(other) ? (await this.#look(other)).inputs : '']);
    }
    return hashOf(this.project.code, this.project.tools, id, rests);
  }
}

/** Lets go for a moment, so that what runs beside can go on. */
function breathe(): Promise<void> {
  return new Promise((go) => setImmediate(go));
}

/** `../NAME` is what stands beside the episodes. */
function readAll(folder: Folder, wants: readonly string[], beside: Folder): Map<string, Given> {
  const given = new Map<string, Given>();
  for (const want of wants) {
    const names = isPattern(want) ? folder.list(want) : [want];
    if (names.length === 0) given.set(want, { error: 'no file fits this name' });
    for (const name of names) given.set(name, name.startsWith('../') ? beside.read(name.slice(3)) : folder.read(name));
  }
  return given;
}

function linesOf(findings: readonly Finding[], sources: readonly Lines[]): Record<string, string> {
  const byFile = new Map(sources.map((s) => [s.file, s]));
  const lines: Record<string, string> = {};
  for (const { place } of findings) lines[`${place.file}:${place.line}`] = byFile.get(place.file)?.line(place.line) ?? '';
  return lines;
}

function top(file: string): Place {
  return { file, line: 1, column: 1, endLine: 1, endColumn: 1 };
}

/** Episodes whose records and facts are held at a time; of a large library the others are read again when they are needed again. */
const mostHeld = 24;

function once<T>(made: Map<string, Promise<T>>, id: string, make: () => Promise<T>, most = Infinity): Promise<T> {
  let value = made.get(id);
  if (!value) {
    made.set(id, (value = make()));
    if (made.size > most) made.delete(made.keys().next().value!);
  }
  return value;
}

/** Names that are no episode, with the nearest that is. */
export function unknownEpisodes(asked: readonly string[], ids: readonly string[]): { id: string; near: string | undefined }[] {
  return asked.filter((id) => !ids.includes(id)).map((id) => ({ id, near: nearest(id, ids) }));
}
