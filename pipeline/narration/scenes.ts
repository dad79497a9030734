// The measured keys of an episode, grouped as sentences speak of them.
import { constantPhases, type Facts, inOrderOfNames, isIdle, type Key, type KeyParts, roomParts, splitKey } from '../facts/index.js';
import { adverbial, namedOf } from './names.js';

/** Phases whose constants describe a setting or a plan and are no result. */
const parameterPhases: ReadonlySet<string> = new Set(constantPhases);

const promise = /ed$|^(?:nominal|label|brochure)$/;

export interface Point {
  key: Key;
  parts: KeyParts;
}

export interface Scene {
  setup: string;
  setting: string;
  workload: string;
  /** Results other than idle ones and the room. */
  points: Point[];
}

function thing(parts: KeyParts): string {
  return `${parts.measure}/${parts.part}`;
}

export class Stage {
  readonly facts: Facts;
  /** All results: measured, and constants that are results (a weight), without the room, idle included. */
  readonly points: Point[] = [];
  readonly rooms: Key[] = [];
  readonly scenes: Scene[] = [];
  readonly #known: ReadonlySet<Key>;
  /** The phases of a measure of a part. */
  readonly #phases = new Map<string, Set<string>>();
  readonly #several: { setup: boolean; setting: boolean; workload: boolean };

  constructor(facts: Facts) {
    this.facts = facts;
    const scenes = new Map<string, Scene>();
    // What is "claimed" or "nominal" of a thing that was read itself is a promise and no result.
    const read = new Set(facts.keys().flatMap((key) => (facts.readings(key).some((r) => !r.constant) ? thing(splitKey(key)!) : [])));
    for (const key of facts.keys().sort(inOrderOfNames(facts.about))) {
      const parts = splitKey(key);
      const counted = facts.readings(key);
      if (!parts || counted.length === 0) continue;
      if (counted.every((r) => r.constant) && (parameterPhases.has(parts.phase) || parts.measure === 'price' || (promise.test(parts.phase) && read.has(thing(parts))))) continue;
      if (parts.measure === 'temperature' && roomParts.includes(parts.part)) {
        this.rooms.push(key);
        continue;
      }
      const point = { key, parts };
      this.points.push(point);
      if (isIdle(parts.phase)) continue;
      const id = [parts.setup, parts.setting, parts.workload].join('/');
      const scene = scenes.get(id) ?? { setup: parts.setup, setting: parts.setting, workload: parts.workload, points: [] };
      scene.points.push(point);
      scenes.set(id, scene);
    }
    this.scenes.push(...scenes.values());
    this.#known = new Set(this.points.map((p) => p.key));
    for (const { parts } of this.points) this.#phases.set(thing(parts), (this.#phases.get(thing(parts)) ?? new Set()).add(parts.phase));
    this.#several = { setup: this.count('setup') > 1, setting: this.count('setting') > 1, workload: this.count('workload') > 1 };
  }

  /** How many names of a field have results. */
  count(field: 'setup' | 'setting' | 'workload'): number {
    return new Set(this.points.map((p) => p.parts[field]).filter(Boolean)).size;
  }

  /** "on the open bench at stock", leaving out what there is only one of and what `without` names; may be empty. */
  where(parts: Pick<KeyParts, 'setup' | 'setting' | 'workload'>, without: readonly string[] = []): string {
    const said = (['setup', 'setting', 'workload'] as const)
      .filter((f) => parts[f] && this.#several[f] && !without.includes(f))
      .map((f) => adverbial(namedOf(this.facts, f, parts[f]), f));
    return said.slice(0, 2).join(' ') + (said[2] ? `, ${said[2]}` : '');
  }

  /** The same, as the start of a sentence, with its comma; empty where nothing needs to be said. */
  opening(parts: Pick<KeyParts, 'setup' | 'setting' | 'workload'>, without: readonly string[] = []): string {
    const said = this.where(parts, without);
    return said && `${said}, `;
  }

  /** "under load"; empty for a key without a phase, for what was not measured over time and has no other phase beside it (a weight), and after "at half load". */
  when({ key, parts }: Point): string {
    const timed = this.facts.readings(key, { aside: true }).some((r) => !r.constant) || (this.#phases.get(thing(parts))?.size ?? 0) > 1;
    const said = parts.phase && timed ? adverbial(namedOf(this.facts, 'phase', parts.phase), 'phase') : '';
    return said === 'under load' && /\bload\b/.test(this.where(parts, ['setup'])) ? '' : said;
  }

  /** "At full speed under load, ": the opening with its phase. */
  setting(point: Point, without: readonly string[]): string {
    const said = [this.where(point.parts, without), this.when(point)].filter(Boolean).join(' ');
    return said && `${said}, `;
  }

  /** Whether a key stands in a ranking of setups, where its value is said. */
  ranked(key: Key): boolean {
    return this.facts.sameBut(key, 'setup').filter((k) => this.#known.has(k)).length > 1;
  }
}
