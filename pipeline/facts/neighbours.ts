// Which other keys belong to a key: its idle, its room, its limit, its price, and those that it can be compared with.
import { type Key, type KeyField, type KeyParts, makeKey, splitKey, withFields } from '../records/index.js';

/** Parts that stand for the air of the room. */
export const roomParts: readonly string[] = ['room', 'ambient'];

interface Known {
  key: Key;
  parts: KeyParts;
  constant: boolean;
}

/** An index over the keys of one episode; every answer is a key, or keys in the order of the record. */
export class Neighbours {
  readonly #all: Known[] = [];
  readonly #byPlace = new Map<string, Known[]>();
  readonly #room: Known[] = [];
  readonly #idle = new Map<Key, Known[]>();
  readonly #holders = new Set<string>();
  readonly #alike = new Map<KeyField, Map<string, Key[]>>();

  constructor(keys: Iterable<{ key: Key; constant: boolean }>) {
    const measured = new Set<string>();
    for (const { key, constant } of keys) {
      const parts = splitKey(key);
      if (!parts) continue;
      const known = { key, parts, constant };
      this.#all.push(known);
      push(this.#byPlace, `${parts.measure}/${parts.part}/${parts.phase}`, known);
      if (parts.measure === 'temperature' && roomParts.includes(parts.part)) this.#room.push(known);
      if (isIdle(parts.phase) && !constant) push(this.#idle, withFields(key, { workload: '', phase: '' }), known);
      // The room of the whole test, put down with its plan, makes that plan no thing tested.
      if (!constant && !(parts.measure === 'temperature' && roomParts.includes(parts.part))) measured.add(parts.setup);
    }
    for (const { parts } of this.#all) if (parts.setup && !measured.has(parts.setup)) this.#holders.add(parts.setup);
  }

  /**
   * The constant `phase` (limit, target, rated …) that holds for a key, from the specific to the general: the setting
   * counts before the setup, the setup before the workload; then what holds for every setup, then a setup that has
   * nothing but constants (a test plan). A constant of the whole measure (no part) holds for each part without its own.
   */
  constantFor(key: Key, phase: string): Key | undefined {
    const at = splitKey(key);
    if (!at) return undefined;
    const own = this.#best(at, this.#byPlace.get(`${at.measure}/${at.part}/${phase}`), true);
    return own ?? (at.part ? this.#best(at, this.#byPlace.get(`${at.measure}//${phase}`), true) : undefined);
  }

  /** The same quantity at idle: without a workload first, as idle needs none. Undefined for an idle key itself. */
  idleOf(key: Key): Key | undefined {
    const at = splitKey(key);
    if (!at || isIdle(at.phase)) return undefined;
    const same = this.#idle.get(withFields(key, { workload: '', phase: '' })) ?? [];
    return (same.find(({ parts }) => parts.workload === '') ?? same.find(({ parts }) => parts.workload === at.workload) ?? (same.length === 1 ? same[0] : undefined))?.key;
  }

  /** The room temperature of the same test: that of the same phase and workload first, then of the setting, the setup, the episode. */
  roomFor(key: Key): Key | undefined {
    const at = splitKey(key);
    if (!at || (at.measure === 'temperature' && roomParts.includes(at.part))) return undefined;
    return this.#best(at, this.#room, false) ?? this.#best({ ...at, workload: '' }, this.#room.map((k) => ({ ...k, parts: { ...k.parts, workload: '' } })), false);
  }

  /** The price of a setup, where a constant of the measure `price` states it. */
  priceOf(setup: string): Key | undefined {
    return this.#all.find(({ parts, constant }) => constant && parts.measure === 'price' && parts.setup === setup)?.key;
  }

  /** The other keys that differ from this one in nothing but `field`. */
  sameBut(key: Key, field: KeyField): Key[] {
    let index = this.#alike.get(field);
    if (!index) {
      index = new Map();
      for (const k of this.#all) push(index, withFields(k.key, { [field]: '' }), k.key);
      this.#alike.set(field, index);
    }
    return (index.get(withFields(key, { [field]: '' })) ?? []).filter((k) => k !== key);
  }

  /** Setups that have nothing but constants: they hold a plan, they are no thing tested. */
  holders(): string[] {
    return [...this.#holders];
  }

  #best(at: KeyParts, candidates: readonly Known[] | undefined, constants: boolean): Key | undefined {
    let best: Known | undefined;
    let most = -1;
    for (const known of candidates ?? []) {
      if (constants && !known.constant) continue;
      const score = this.#fit(known.parts, at);
      if (score > most) [best, most] = [known, score];
    }
    return best?.key;
  }

  /** How specific a key is to `at`; −1 when it speaks of another setup, setting or workload. */
  #fit(parts: KeyParts, at: KeyParts): number {
    let score = parts.phase === at.phase ? 3 : parts.phase === '' ? 2 : 1;
    if (parts.setting === at.setting) score += parts.setting ? 64 : 0;
    else if (parts.setting) return -1;
    if (parts.setup === at.setup) score += parts.setup ? 32 : 8;
    else if (parts.setup === '') score += 8;
    else if (!this.#holders.has(parts.setup)) return -1;
    if (parts.workload === at.workload) score += parts.workload ? 16 : 0;
    else if (parts.workload) return -1;
    return score;
  }
}

export function isIdle(phase: string): boolean {
  return phase === 'idle';
}

/** The key under which the price of a setup stands that the record gives with the setup itself. */
export function priceKey(setup: string): Key {
  return makeKey({ setup, measure: 'price' });
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}
