// Names as they go into a sentence: as a noun ("the open bench") and as an adverbial ("on the open bench").
import type { Facts, KeyField, Named } from '../facts/index.js';
import { units } from '../quantities/index.js';

const preposition = /^(on|in|at|with|without|under|inside|during|after|before|over|above|by|from|through)\s+(.+)$/i;
/** "two weeks later" is one without a preposition. */
const lateness = /\b(later|ago|afterwards)$/i;
const article = /^(the|a|an)\s+/i;
const inside = new Set(['scene', 'loop', 'game', 'render', 'run', 'walk', 'pass', 'test', 'level', 'benchmark']);
const unitWords = new Set(['to one', ...[...units.values()].flatMap((u) => [u.one, u.many, u.symbol, ...u.also]).filter(Boolean).map((w) => w.toLowerCase())]);
/** "the render takes", "starts at", "pulling": what a thing does with what is measured. */
const verbs = /^(?:took|takes|taking|lasts|lasting|draws|drawing|pulls|pulling|sips|drinks|eats|uses|using|burns|needs|weighs|holds|moves|turns|spins|shifts|reaches|begins|starts|settles|levels|recovers|charges|throttles|sustaining)(?: (?:at|to|up|out|off|on|after|in)\b.*)?$/i;

const maps = { setup: 'setups', setting: 'settings', workload: 'workloads', measure: 'measures', part: 'parts', phase: 'phases' } as const;

/** The name that the record gives an id; an id it does not name gets its own words. */
export function namedOf(facts: Facts, field: KeyField, id: string): Named {
  const known: Named | undefined = facts.about[maps[field]].get(id);
  const words = id.replace(/[-_]/g, ' ');
  return known ?? { id, name: words, spoken: [words], place: facts.about.place };
}

function forms(named: Named): string[] {
  const spoken = named.spoken.map((s) => s.trim().replace(/\s+/g, ' ')).filter(Boolean);
  return spoken.length ? spoken : [named.name];
}

/** The first spoken form that is no adverbial; undefined when there is none ("on mains; plugged in"). */
export function noun(named: Named): string | undefined {
  const all = forms(named);
  const adverb = isAdverbial(all[0]!);
  return all.find((f) => !isAdverbial(f) && (!adverb || article.test(f) || /^\p{Lu}/u.test(f)));
}

function isAdverbial(form: string): boolean {
  return preposition.test(form) || lateness.test(form);
}

/** "the open bench" without its article. */
export function bare(text: string): string {
  return text.replace(article, '');
}

/** "on the open bench", "at stock", "with the power limit", "under load". */
export function adverbial(named: Named, field: KeyField): string {
  const all = forms(named);
  const thing = noun(named);
  if (!thing || isAdverbial(all[0]!)) return all[0]!;
  for (const form of all) {
    const m = preposition.exec(form);
    if (!m) continue;
    if (thing.toLowerCase().endsWith(form.toLowerCase())) return `with ${withArticle(thing)}`;
    if (/^\d+$/.test(m[2]!) || words(m[2]!).some((w) => words(thing).includes(w))) return `${m[1]!.toLowerCase()} ${thing}`;
  }
  const last = words(thing).at(-1)!;
  if (field === 'phase') {
    if (named.id === 'idle') return 'at idle';
    if (named.id === 'load') return 'under load';
    if (/^(?:start|end)$/.test(thing)) return `at the ${thing}`;
    if (/ to /.test(thing)) return `from ${thing}`;
    return /^(first|last|second)\b/.test(thing) ? `in the ${thing}` : `during ${thing}`;
  }
  if (/^[\d.]+\b/.test(thing) || last === 'stock') return `at ${thing}`;
  if (last === 'load') return `under ${thing}`;
  if (field === 'workload' && inside.has(last)) return `in ${withArticle(thing)}`;
  return `with ${thing}`;
}

function withArticle(thing: string): string {
  return article.test(thing) || /^\p{Lu}/u.test(thing) ? thing : `the ${thing}`;
}

function words(text: string): string[] {
  return bare(text).toLowerCase().split(' ');
}

/** "temperature", "clock": the first spoken form that is no unit and no adverbial. */
export function measureNoun(named: Named): string {
  const found = forms(named).find((f) => !preposition.test(f) && !unitWords.has(f.toLowerCase()) && !verbs.test(f) && !/^how\b/i.test(f));
  if (!found && (unitWords.has(named.name.toLowerCase()) || verbs.test(named.name))) return named.id.replace(/[-_]/g, ' ');
  return bare(found ?? named.name.replace(/^\p{Lu}(?=\p{Ll})/u, (c) => c.toLowerCase()));
}

/** "board power", "average frame rate", "core clock", "temperature over room": what was read and where, without an article. */
export function quantityNoun(facts: Facts, measure: string, part: string): string {
  const m = measureNoun(namedOf(facts, 'measure', measure));
  if (!part) return m;
  const named = namedOf(facts, 'part', part);
  const whole = forms(named).find((f) => !preposition.test(f) && ` ${bare(f).toLowerCase()}`.includes(` ${m.toLowerCase()}`));
  if (whole) return bare(whole);
  const p = single(named, noun(named));
  if (p === undefined) {
    const first = forms(named)[0]!;
    return /^on average$/i.test(first) ? `average ${m}` : `${m} ${first}`;
  }
  const stem = bare(p).replace(/s$/, '').toLowerCase();
  // "Runtime" is a time, "airflow" a flow.
  if (bare(p).toLowerCase().endsWith(m.toLowerCase())) return bare(p);
  return m.toLowerCase().startsWith(stem) ? m : `${bare(p)} ${m}`;
}

/** "The fans" have a fan speed. */
function single(named: Named, thing: string | undefined): string | undefined {
  const one = named.id.replace(/[-_]/g, ' ');
  return thing !== undefined && bare(thing).toLowerCase() === `${one}s` ? bare(thing).slice(0, -1) : thing;
}

const massNouns = new Set(['power', 'voltage', 'current', 'noise', 'duty', 'charge', 'flow', 'pressure', 'energy', 'airflow', 'bandwidth', 'throughput', 'utilisation', 'efficiency', 'weight', 'draw', 'ripple', 'latency']);

/** "the core temperature", but "board power". */
export function definite(quantity: string): string {
  return massNouns.has(quantity.split(' ').at(-1)!.toLowerCase()) ? quantity : `the ${quantity}`;
}
