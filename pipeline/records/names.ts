// The names that a record may use: declared ones, common ones, and, where a section is left out, those that it uses.
import { type Finding, nearest, type Place } from '../places/index.js';
import { commonMeasures, commonParts, commonPhases } from './common-names.js';
import type { Measure, Named, Setting, Setup } from './episode.js';
import { readHeading } from './heading-words.js';
import { idRule, isId, type KeyField, keyFields } from './key.js';

const common: Record<KeyField, ReadonlyMap<string, unknown>> = {
  setup: new Map(), setting: new Map(), workload: new Map(), measure: commonMeasures, part: commonParts, phase: commonPhases,
};

const section: Record<KeyField, string> = { setup: 'setups', setting: 'settings', workload: 'workloads', measure: 'measures', part: 'parts', phase: 'phases' };

export class Names {
  readonly #known: Record<KeyField, Map<string, Named>>;
  readonly #closed = new Set<KeyField>();
  readonly #told = new Set<string>();
  readonly #findings: Finding[];

  constructor(findings: Finding[]) {
    this.#findings = findings;
    this.#known = Object.fromEntries(keyFields.map((f) => [f, new Map<string, Named>()])) as unknown as Record<KeyField, Map<string, Named>>;
  }

  /** A section that stands in the record is complete: a name that it lacks is a mistake. */
  declare(kind: KeyField, named: readonly Named[]): void {
    this.#closed.add(kind);
    for (const n of named) this.#known[kind].set(n.id, n);
  }

  /** Whether `id` may be used; a wrong one is a finding at `place`, told once a place. The empty id is always right. */
  use(kind: KeyField, id: string, place: Place | (() => Place), where = ''): boolean {
    if (id === '' || this.#known[kind].has(id)) return true;
    if (isId(id) && (!this.#closed.has(kind) || common[kind].has(id))) {
      const at = typeof place === 'function' ? place() : place;
      const near = kind === 'measure' && !common[kind].has(id) ? measureMeant(id) : undefined;
      if (near === undefined) {
        this.#known[kind].set(id, byDefault(kind, id, at));
        return true;
      }
    }
    const at = typeof place === 'function' ? place() : place;
    const mark = `${kind} ${id} ${at.file}:${at.line}:${at.column}`;
    if (this.#told.has(mark)) return false;
    this.#told.add(mark);
    const known = [...new Set([...this.#known[kind].keys(), ...common[kind].keys()])];
    const near = nearest(id, known) ?? (kind === 'measure' ? measureMeant(id) : undefined);
    const expected = !isId(id) && !near ? `; an id has ${idRule}` : near ? `; did you mean ${near}?` : known.length && known.length <= 8 ? `; known are ${known.join(', ')}` : '';
    this.#findings.push({
      code: 'unknown-name', severity: 'error', place: at, said: id, subject: id, ...(near && { suggest: near }),
      message: `Unknown ${kind} "${id}"${where && ` ${where}`}${expected}${near && !this.#closed.has(kind) ? ` (if it is meant, give it under ${section[kind]})` : ''}`,
    });
    return false;
  }

  map(kind: KeyField): Map<string, Named> {
    return this.#known[kind];
  }
}

/** The common measure that goes by another word ("temp", "clock") or by its unit ("fps"). */
function measureMeant(id: string): string | undefined {
  return nearest(id, commonMeasures.keys()) ?? readHeading(id).measure;
}

/** A name made from an id: "open-bench" is shown as "Open bench". */
export function shownFromId(id: string): string {
  const words = id.replace(/[-_]+/g, ' ').trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** How a thing is spoken where the record does not say: with and without its article, the likelier form first. */
export function spokenByDefault(kind: KeyField, id: string, name: string): string[] {
  if (kind === 'measure') return [...(commonMeasures.get(id)?.spoken ?? [lowered(name, kind)])];
  if (kind === 'phase') return [...(commonPhases.get(id) ?? [lowered(name, kind)])];
  const plain = lowered(name, kind);
  return kind === 'setting' && isStock(name) ? [plain, `at ${plain}`] : [`the ${plain}`, plain];
}

/** A product's name is a proper name: its capitals stay as they were written. */
export function spokenProduct(name: string): string[] {
  return [`the ${name}`, name];
}

/** What a name is that the record uses and does not declare. */
function byDefault(kind: KeyField, id: string, place: Place): Named | Setup | Setting | Measure {
  const name = kind === 'measure' ? measureName(id) : shownFromId(id);
  const named: Named = { id, name, spoken: spokenByDefault(kind, id, name), place };
  if (kind === 'measure') return { ...named, better: commonMeasures.get(id)?.better ?? 'neither' };
  if (kind === 'setup') return { ...named, kind: 'arrangement' };
  if (kind === 'setting') return { ...named, parameters: [], ...(isStock(id) && { kind: 'stock' }) };
  return named;
}

/** A common measure is shown as it is spoken ("Clock"), any other by its id. */
export function measureName(id: string): string {
  return shownFromId(commonMeasures.get(id)?.spoken[0] ?? id);
}

export function isStock(name: string): boolean {
  return /^(stock|default|standard)$/i.test(name);
}

/** "Open bench" is said "open bench", "Power limit 80 %" "power limit 80 %"; a setup with a number ("Varrow 12") and "VRM" keep their capitals. */
function lowered(name: string, kind: KeyField): string {
  const [first = ''] = name.split(' ');
  const proper = /[\p{Lu}\d]/u.test(first.slice(1)) || (kind === 'setup' && /\d/.test(name));
  return proper ? name : name.charAt(0).toLowerCase() + name.slice(1);
}
