// How the record's things are spoken: a trie of names over words and numbers, and the general words for each kind of quantity.
import { doing } from './doing.js';
import { type Levels, levelsOf } from './axis-levels.js';
import { positions, stretches } from './positions.js';
import { byOrdinal, led } from './led-names.js';
import { prepositions } from './halves.js';
import { halfNames } from './slots-of.js';
import type { Dimension, Unit } from '../quantities/index.js';
import type { Facts, KeyField } from '../facts/index.js';
import { type Token, tokens } from '../script/index.js';
import type { Grid } from './grid.js';
import { dimensionWords } from './dimension-words.js';
import { otherEnds } from './opposite-end.js';
import { lacking } from './without-alone.js';
import { keyOfPhrase, plain, stem } from './name-keys.js';
import { neededBefore } from './own-names.js';
import { type Role, roleWords } from './roles.js';
import { elliptical, type NameMaps, shortened } from './said-with-less.js';
import { slotsOf } from './slots-of.js';

/** What a name says: values of slots, or a leaning towards a kind of quantity or a role. */
export interface Meaning {
  slots: readonly { slot: number; value: string }[];
  /** The fields of those slots. */
  fields: readonly KeyField[];
  dimension?: readonly Dimension[];
  role?: { role: Role; firm: boolean };
  /** From the record's own names (strong) or from the general words (weak). */
  own: boolean;
  /** It names only what stands first or after a word that leads to it: "the louvre", where a setting is called "with the louvre". */
  led?: true;
  /** It names only after that word: "its own stand". */
  after?: 'own' | 'that' | 'this';
}

export interface Name {
  from: number;
  to: number;
  meanings: readonly Meaning[];
}

export interface Node {
  next: Map<string, Node>;
  meanings?: Meaning[];
}

export interface Lexicon {
  root: Node;
  /** All words of proper names, for words misheard in a transcript. */
  heard: ReadonlyMap<string, Meaning[]>;
  /** The unit in which each measure is given, where it is one alone. */
  unitOf: ReadonlyMap<string, Unit>;
  /** The slot of measures. */
  measureSlot: number;
  /** "the third" for "the third step": places that name a setting or a load. */
  places: ReadonlyMap<string, Meaning>;
  /** "60" for "60 percent", where it names one setting or load alone: numbers said short. */
  short: ReadonlyMap<string, readonly Meaning[]>;
  /** "blower", where a setting is called "blower at thirty": what is set to a number. */
  setNouns: ReadonlySet<string>;
  /** Whole numbers that stand in names. */
  numbered: ReadonlySet<string>;
  /** The last value of a row of settings or loads for its first, and the first for its last. */
  otherEnds: ReadonlyMap<string, Meaning>;
  /** The levels of things that are crossed, by their words. */
  levels: Levels;
  /** What "without" alone stands for. */
  lacking: Meaning | undefined;
  /** Parts that are measured in plain degrees. */
  warm: ReadonlySet<string>;
  /** What is told as the own of something. */
  owns: readonly Meaning[];
  /** Settings and loads that the record gives a limit or target for, as slot and value. */
  setTo: ReadonlySet<string>;
  /** The dimensions of what each of those is set to. */
  setIn: ReadonlyMap<string, ReadonlySet<Dimension>>;
}

export function lexicon(facts: Facts, g: Grid): Lexicon {
  const root: Node = { next: new Map() };
  const put = (words: readonly string[], given: Omit<Meaning, 'fields'>): void => {
    const { slots, dimension, role, own, led: toldBy, after } = given;
    const meaning: Meaning = { slots, fields: [...new Set(slots.map((s) => g.slots[s.slot]!.field))], dimension, role, own, led: toldBy, after };
    if (words.length === 0) return;
    let node = root;
    for (const w of words) {
      let child = node.next.get(w);
      if (!child) node.next.set(w, (child = { next: new Map() }));
      node = child;
    }
    const list = (node.meanings ??= []);
    if (!list.some((m) => JSON.stringify(m) === JSON.stringify(meaning))) list.push(meaning);
  };
  const owns: Meaning[] = [];
  const about = facts.about;
  const maps: NameMaps = [['setup', about.setups], ['setting', about.settings], ['workload', about.workloads], ['measure', about.measures], ['part', about.parts], ['phase', about.phases]];
  for (const [field, map] of maps) {
    for (const n of map.values()) {
      const spoken = new Set([...n.spoken, n.name, field === 'part' || field === 'measure' || n.spoken.length === 0 || field === 'phase' ? n.id.replace(/[-_]/g, ' ') : n.id.replace(/[-_]/g, ' ')]);
      for (const form of spoken) {
        const words = keyOfPhrase(form);
        const bare = field === 'measure' || field === 'part' ? words : words;
        if (field === 'measure' && isUnitWord(words)) continue;
        if (bare.every((w) => prepositions.has(w))) continue;
        const after = neededBefore(form, words);
        put(bare, { slots: slotsOf(g, field, n.id, words), own: true, ...(after && { after }) });
        if (after === 'own' && !owns.some((m) => m.slots.every((x, k) => x.value === slotsOf(g, field, n.id, words)[k]?.value))) owns.push({ slots: slotsOf(g, field, n.id, words), fields: [field], own: true });
        // "drum heat", where a quantity is called "heat": the name of the part tells it as well.
        if (field === 'part' && words.length > 1) for (const m of about.measures.values()) if (g.measureUnits.has(m.id) && !isUnitWord(words.slice(-1)) && [...m.spoken, m.name].some((f) => { const k = keyOfPhrase(f); return k.length === 1 && k[0] === words.at(-1); }) && g.byMeasure.get(m.id)!.some((x) => g.of.part.some((i) => x.at[i] === n.id))) put(bare, { slots: slotsOf(g, 'measure', m.id, []), own: true });
        // "the lower limit" as a setting's name may still speak of the limit itself.
        if (field === 'setting') for (const w of words) { const r = roleWords.get(w); if (r?.firm && (r.role === 'limit' || r.role === 'target' || r.role === 'rated')) put(bare, { slots: [], role: { role: r.role, firm: false }, own: false }); }
        for (const [part, slots] of halfNames(g, field, n.id, words)) put(part, { slots, own: true });
        const inner = bare[0] && prepositions.has(bare[0]) ? bare.slice(1) : undefined;
        if (inner && inner.length && (field === 'setup' || field === 'setting') && inner.some((w) => n.id.split('-').map(plain).includes(w)) && !(inner.length === 1 && taken(maps, field, inner[0]!))) put(inner, { slots: slotsOf(g, field, n.id, words), own: true });
      }
      if (field === 'phase') for (const form of [...elapsed(n.id), ...stretches(n.id)]) put(keyOfPhrase(form), { slots: slotsOf(g, field, n.id, []), own: true });
    }
  }
  for (const i of [...g.of.setup, ...g.of.setting]) {
    if (g.slots[i]!.axis === undefined) continue;
    for (const value of g.values[i]!.keys()) if (!taken(maps, g.slots[i]!.field, value)) put(keyOfPhrase(value.replaceAll('-', ' ')), { slots: [{ slot: i, value }], own: true });
  }
  for (const [phrase, id] of positions(g, about.settings)) if (!meaningsAt(root, keyOfPhrase(phrase))) put(keyOfPhrase(phrase), { slots: slotsOf(g, 'setting', id, []), own: true });
  for (const [words, meaning] of [...shortened(maps, g), ...byOrdinal(maps, g), ...led(maps, g)]) if (!meaningsAt(root, words)) for (const m of meaning) put(words, m);
  for (const [text, dimension] of dimensionWords) put(keyOfPhrase(text), { slots: [], dimension, own: false });
  // "under the full load", where a workload is called "full load": the record's own name is meant.
  for (const [text, role] of roleWords) { const words = keyOfPhrase(text); if (words.length < 2 || !meaningsAt(root, words.slice(1))?.some((m) => m.own && m.fields.some((f) => f === 'workload' || f === 'setting'))) put(words, { slots: [], role, own: false }); }
  for (const [words, meaning] of doing(about.settings.values(), (id, w) => slotsOf(g, 'setting', id, w))) if (!meaningsAt(root, words)) put(words, meaning);
  const numbered = new Set([...about.setups.values()].flatMap((n) => [n.id, ...n.spoken].flatMap((s) => s.match(/\b\d{1,4}\b/g) ?? [])));
  const unitOf = new Map([...g.byMeasure].flatMap(([m, list]) => { const ids = new Set(list.map((c) => c.unit.id)); return ids.size === 1 ? [[m, list[0]!.unit] as const] : []; }));
  const setIn = new Map<string, Set<Dimension>>();
  for (const x of g.cells) if (x.constant) for (const i of [...g.of.setting, ...g.of.workload]) if (x.at[i]) setIn.set(`${i}=${x.at[i]}`, (setIn.get(`${i}=${x.at[i]}`) ?? new Set()).add(x.unit.dimension));
  return { root, heard: properWords(maps, g), short: shortNumbers(root), setNouns: new Set([...about.settings.values()].flatMap((n) => n.spoken.flatMap((s) => /^(?:the )?(\p{L}{3,}) (?:at|on|set to)(?: the)? \S+/u.exec(s.toLowerCase())?.[1] ?? []))), numbered, unitOf, measureSlot: g.of.measure[0]!, setIn, setTo: new Set(setIn.keys()), levels: levelsOf(g, about), places: elliptical(maps, g), otherEnds: otherEnds(g), lacking: lacking(root), owns, warm: new Set(g.cells.flatMap((x) => (!x.fixed && x.unit.dimension === 'temperature' ? g.of.part.map((i) => x.at[i]!) : []))) };
}

function taken(maps: NameMaps, field: KeyField, word: string): boolean {
  return maps.some(([f, map]) => f !== field && [...map.values()].some((n) => [n.id, ...n.spoken].some((s) => { const k = keyOfPhrase(s); return k.length === 1 && k[0] === plain(word); })));
}

function isUnitWord(words: readonly string[]): boolean {
  return words.length === 1 && /^(?:degree|percent|watt|volt|decibel|megahertz|gigahertz|kelvin|rpm|fps|gram|minute|second|hour|millivolt|(?:mega|giga)byte|celsius|fahrenheit|amp|point|milliamp|kilogram|hertz|frame|litre|liter|lux|nit)$/.test(words[0]!);
}

/** "after-30-min": "after 30 minutes", "half an hour in", "half an hour later". */
function elapsed(id: string): string[] {
  const m = /(\d+)-?(min|minute|minutes|s|sec|h|hour|hours)\b/.exec(id.replace(/_/g, '-'));
  if (!m) return [];
  const unitWord = m[2]!.startsWith('h') ? 'hour' : m[2]!.startsWith('s') ? 'second' : 'minute';
  const forms = [`${m[1]} ${unitWord}s`];
  if (unitWord === 'minute' && m[1] === '30') forms.push('half an hour', 'half hour');
  if (unitWord === 'minute' && m[1] === '60') forms.push('an hour', 'one hour');
  if (unitWord === 'minute' && m[1] === '15') forms.push('a quarter of an hour');
  return /after|end|last/.test(id) ? forms.flatMap((f) => [`after ${f}`, `${f} in`, `${f} later`, `${f} on`, `${f} into`]) : forms.flatMap((f) => [`first ${f}`, `after ${f}`, f]);
}

function meaningsAt(root: Node, words: readonly string[]): readonly Meaning[] | undefined {
  let node: Node | undefined = root;
  for (const w of words) node = node?.next.get(w);
  return node?.meanings;
}

/** Numbers whose names have but one word more. */
function shortNumbers(root: Node): Map<string, readonly Meaning[]> {
  const out = new Map<string, readonly Meaning[]>();
  for (const [key, node] of root.next) {
    if (!key.startsWith('#') || node.meanings) continue;
    const longer = [...node.next.values(), ...[node.next.get('per')?.next.get('cent') ?? node].filter((n) => n !== node)].flatMap((n) => n.meanings ?? []);
    const values = new Set(longer.flatMap((m) => m.slots.map((s) => `${s.slot}=${s.value}`)));
    if (values.size === 1 && longer.every((m) => m.fields.every((f) => f === 'setting' || f === 'workload'))) out.set(key, longer);
  }
  return out;
}

/** Capitalised words of setup names, for a word that a transcript misheard. */
function properWords(maps: NameMaps, g: Grid): Map<string, Meaning[]> {
  const out = new Map<string, Meaning[]>();
  for (const [field, map] of maps) {
    if (field !== 'setup' && field !== 'workload') continue;
    for (const n of map.values()) {
      for (const form of n.spoken) {
        for (const w of tokens(form)) {
          if (w.kind !== 'word' || w.low.length < 5 || !/^\p{Lu}/u.test(w.text)) continue;
          out.set(w.low, [{ fields: [field], slots: slotsOf(g, field, n.id, keyOfPhrase(form)), own: true }]);
        }
      }
    }
  }
  return out;
}

export function meaningsOf(lex: Lexicon, words: readonly string[]): readonly Meaning[] | undefined {
  return meaningsAt(lex.root, words);
}

const verbsToo = new Set(['read', 'write', 'draw', 'run', 'load', 'rise', 'drop', 'lead', 'set', 'hold', 'take', 'spin', 'turn', 'cool']);
const subjects = new Set(['it', 'they', 'we', 'i', 'you', 'he', 'she', 'which', 'that', 'meter', 'gauge', 'sensor', 'would', 'will', 'can', 'could']);

const stillVerb = /^(?:reach|manage|deliver|make|run|need|take|draw|beat|lead|hold|keep|get|give|come|turn|stay|go|lose|win|move|cost|hit|do|has|have|had|is|was|are|were|can|could|would|will|won't|reached|ran|needed|took|drew|held|kept|got|gave|came|turned|stayed|went|lost|won|moved)(?:e?s)?$/;

/** "it read 1.449", "Measured against the rating": a verb, although a part or a phase may be called so. */
export function isVerb(t: readonly Token[], n: Name): boolean {
  if (n.to - n.from !== 1) return false;
  if (t[n.to]?.low === 'against' && t[n.from]!.low.endsWith('ed')) return true;
  // "the small one still reaches 81", where a setting is called so
  if (t[n.from]!.low === 'still' && stillVerb.test(t[n.to]?.low ?? '')) return true;
  return verbsToo.has(stem(t[n.from]!)) && subjects.has(t[n.from - 1]?.low ?? '') && t[n.from - 2]?.low !== 'which';
}

/** All names in a sentence, the longest at each place; a shorter one inside a longer is left out unless it is of another field. */
export function findNames(lex: Lexicon, list: readonly { key: string; from: number; to: number }[]): Name[] {
  const out: Name[] = [];
  for (let i = 0; i < list.length; i++) if (lex.root.next.has(list[i]!.key)) nameAt(lex.root, list, i, out);
  return out;
}

function nameAt(root: Node, list: readonly { key: string; from: number; to: number }[], i: number, out: Name[]): void {
  let node: Node | undefined = root;
  let found: Name | undefined;
  let own: Name | undefined;
  for (let j = i; j < list.length && node; j++) {
    node = node.next.get(list[j]!.key);
    if (!node?.meanings) continue;
    found = { from: list[i]!.from, to: list[j]!.to, meanings: node.meanings };
    if (hasOwn(found)) own = found;
  }
  if (!found) return;
  // "writes at", where a part is called "writes": a general word hides no name of the record.
  if (own && own !== found && !hasOwn(found) && !encloses(out, own)) out.push(own);
  // "with the blower on low the vents cost 3": an article begins what is spoken of next, behind a name.
  if (out.length > 0 && crossesInto(out, list, i, found)) return;
  if (!isWithin(out, found)) out.push(found);
}

function hasOwn(n: Name): boolean {
  return n.meanings.some((m) => m.own);
}

function encloses(out: readonly Name[], name: Name): boolean {
  return out.some((n) => n.from <= name.from && n.to >= name.to);
}

function isWithin(out: readonly Name[], name: Name): boolean {
  return out.some((n) => n.from <= name.from && n.to >= name.to && n.to - n.from > name.to - name.from);
}

function crossesInto(out: readonly Name[], list: readonly { from: number; to: number }[], i: number, name: Name): boolean {
  return out.some((n) => n.from < name.from && n.to > name.from && n.to < name.to) && list.some((a, k) => k > i && a.to <= name.to && a.from > list[k - 1]!.to);
}
