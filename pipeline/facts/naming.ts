// What things are called where there is little room: on pictures and in tables.
import type { Place } from '../places/index.js';
import { readQuantity, show } from '../quantities/index.js';
import { type HowObtained, type KeyField, splitKey } from '../records/index.js';
import type { Fact } from './fact.js';
import { readId } from './id.js';
import type { About, Facts } from './facts.js';

const lists = { setup: 'setups', setting: 'settings', workload: 'workloads', measure: 'measures', part: 'parts', phase: 'phases' } as const;

/** How a part or a product was come by, in a word. */
export const obtainedWords: Readonly<Record<HowObtained, string>> = { bought: 'bought', lent: 'lent', sponsored: 'sponsored', given: 'given', own: 'already owned' };

/** The name shown for an id, the id itself where the record has none. */
export function nameOf(about: About, field: KeyField, id: string): string {
  return about[lists[field]].get(id)?.name ?? id;
}

/** Where the title, or else the longest name within a text, stands in the record: what has to be changed when the text is too long. */
export function placeOfName(about: About, text: string): Place | undefined {
  if (text && text === about.title) return about.texts.find((t) => t.role === 'title')?.place;
  const all = Object.values(lists).flatMap((list) => [...about[list].values()]).filter((n) => n.name && text.includes(n.name));
  return all.sort((a, b) => b.name.length - a.name.length)[0]?.place;
}

/** "Core temperature", "Board power", "Fan speed" (not "Fans fan speed"), "1 % low frame rate". */
export function quantityName(about: About, measure: string, part: string): string {
  const m = nameOf(about, 'measure', measure);
  const p = part ? nameOf(about, 'part', part) : '';
  const stem = p.toLowerCase().replace(/s$/, '');
  if (!p || m.toLowerCase().includes(stem)) return capital(m);
  return capital(`${p} ${/^\p{Lu}\p{Ll}/u.test(m) ? m[0]!.toLowerCase() + m.slice(1) : m}`);
}

/** ", load" where the same quantity was also read in another phase, so that a title says which; else nothing. */
export function phaseNote(facts: Facts, { measure, part, phase }: { measure: string; part: string; phase: string }): string {
  const other = facts.keys().map((k) => ({ k, p: splitKey(k)! })).some(({ k, p }) => p.measure === measure && p.part === part && p.phase !== phase && facts.readings(k).some((r) => !r.constant));
  return other && phase ? `, ${nameOf(facts.about, 'phase', phase).toLowerCase()}` : '';
}

/** "lower is better", "higher is better", or nothing. */
export function betterWords(about: About, measure: string): string {
  const better = about.measures.get(measure)?.better ?? 'neither';
  return better === 'neither' ? '' : `${better} is better`;
}

/** What a fact is a figure of: "Core temperature over room", "Average frame rate per watt", "Board power, share of its limit". */
export function factName(about: About, fact: Fact): string {
  const at = splitKey(fact.subject);
  const what = at ? quantityName(about, at.measure, at.part) : '';
  const whole = fact.kind === 'percent_of' ? splitKey(fact.keys[1] ?? '')?.phase : undefined;
  const forms: Partial<Record<Fact['kind'], string>> = {
    rise: `${what}, rise`, difference: `${what}, difference`, points: `${what}, difference`, percent_change: `${what}, change`,
    percent_of: whole === 'limit' ? `${what}, share of the limit` : `${what}, share`, ratio: `${what}, ratio`,
    over_room: `${what} over room`, at_room: `${what}, corrected to a room of ${referenceOf(fact)}`, per_watt: `${overRoom(fact) ? `${what} over room` : what} per watt`, per_price: `${what} per ${fact.unit.one.split(' per ').at(-1)}`,
    energy: /energy/i.test(what) ? what : `${what}, energy`, per_energy: `${what} per ${fact.unit.one.split(' per ').at(-1)}`, heat: 'Heat carried by the coolant',
    approach: fact.variant === 'final' ? `${what}, level approached` : `${what}, time constant`,
    level_sum: `${what}, sum of sources`, without_background: `${what} without background`, at_distance: `${what} at ${literal(fact.against[1])}`,
    rank: `${what}, place`, median: `${what}, median`, range: `${what}, range`, count: fact.variant === 'runs' ? 'Runs' : 'Count',
  };
  return forms[fact.kind] ?? what;
}

/** Whether what is divided is itself over the room: kelvins for each watt. */
function overRoom(fact: Fact): boolean {
  return readId(fact.id)?.operands[0]?.startsWith('(over_room') ?? false;
}

function literal(operand = ''): string {
  const q = operand.startsWith('=') ? readQuantity(operand.slice(1)) : undefined;
  return q && 'quantity' in q ? show(q.quantity.value, q.quantity.unit, q.quantity.decimals) : 'another distance';
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

function referenceOf(fact: Fact): string {
  const read = readQuantity(fact.against.at(-1)?.replace(/^=/, '') ?? '');
  return 'quantity' in read ? show(read.quantity.value, read.quantity.unit, read.quantity.decimals) : 'another temperature';
}
