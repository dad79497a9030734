// Keys as the record refers to them: whole, or with fields left out where only one reading fits.
import { nearest } from '../places/index.js';
import type { Reader } from './document.js';
import { type Key, type KeyField, keyFields, splitKey } from './key.js';
import type { Written } from './shape.js';

export class References {
  readonly #keys: readonly Key[];
  readonly #known: Set<Key>;
  readonly #names: Record<KeyField, Set<string>>;
  readonly #reader: Reader;
  /** Set where readings are missing because their file could not be read: then a key that nothing fits is no news. */
  readonly #incomplete: boolean;

  constructor(keys: readonly Key[], reader: Reader, incomplete: boolean) {
    this.#keys = keys;
    this.#known = new Set(keys);
    this.#names = Object.fromEntries(keyFields.map((f) => [f, new Set(keys.map((k) => splitKey(k)![f]))])) as Record<KeyField, Set<string>>;
    this.#reader = reader;
    this.#incomplete = incomplete;
  }

  /** The whole key; `#run` behind it is kept. Undefined, and a finding, where no reading or more than one fits. */
  key(w: Written): Key | undefined {
    const [text, run] = w.text.trim().split('#') as [string, string?];
    const end = run === undefined ? '' : `#${run}`;
    if (this.#known.has(text)) return text + end;
    const fits = this.#keys.filter((k) => isPartOf(text, k));
    if (fits.length === 1) return fits[0]! + end;
    if (fits.length > 1) {
      this.#reader.fail(w.place, 'reading-ambiguous', `"${text}" fits ${fits.length} readings: ${fits.slice(0, 3).join(', ')}${fits.length > 3 ? ' …' : ''}; write more of its fields`, { said: text });
    } else if (!this.#incomplete) {
      const near = nearest(text, this.#keys) ?? this.#likest(text);
      this.#reader.fail(w.place, 'reading-unknown', `no reading of ${text}${near ? `; did you mean ${near}?` : ''}`, { said: text, subject: text, ...(near && { suggest: near }) });
    } else if (splitKey(text)) return text + end;
    return undefined;
  }

  /** A key with fields left out becomes the whole one where just one fits; anything else stays as it is. */
  expand(text: string): string {
    if (!text.includes('/') || /[:(=]/.test(text) || this.#known.has(text)) return text;
    const fits = this.#keys.filter((k) => isPartOf(text, k));
    return fits.length === 1 ? fits[0]! : text;
  }

  /**
   * An operand of a fact: a key, a bracketed fact id, or a literal ("=1000 g"). A whole key of known names is taken even
   * where no reading stands behind it: that a stated value rests on nothing is for the checks to tell.
   */
  operand(w: Written): string | undefined {
    const text = w.text.trim();
    if (/^[(=]/.test(text)) return text;
    const parts = splitKey(text.split('#')[0]!);
    const whole = parts && keyFields.every((f) => parts[f] === '' || this.#names[f].has(parts[f]));
    return whole ? text : this.key(w);
  }

  /** The idle reading of the same quantity: without a workload first, as idle needs none. */
  idleOf(key: Key): Key | undefined {
    const at = splitKey(key);
    if (!at) return undefined;
    const parts = (k: Key) => splitKey(k)!;
    const fits = this.#keys.filter((k) => {
      const p = parts(k);
      return p.phase === 'idle' && p.measure === at.measure && p.part === at.part && p.setup === at.setup && p.setting === at.setting;
    });
    return fits.find((k) => parts(k).workload === '') ?? fits.find((k) => parts(k).workload === at.workload) ?? (fits.length === 1 ? fits[0] : undefined);
  }

  /** The key of which the most fields are the same, if all but one are. */
  #likest(text: string): Key | undefined {
    const at = splitKey(text);
    if (!at) return undefined;
    return this.#keys.find((k) => {
      const p = splitKey(k)!;
      return keyFields.filter((f) => p[f] !== at[f]).length === 1;
    });
  }
}

/** Whether the fields of `text`, in order, are among those of `key`. */
function isPartOf(text: string, key: Key): boolean {
  const wanted = text.split('/').filter(Boolean);
  const has = key.split('/');
  let i = 0;
  for (const field of has) if (i < wanted.length && field === wanted[i]) i++;
  return wanted.length > 0 && i === wanted.length;
}
