// What things are called where there is little room: on pictures and in tables.
import type { KeyField } from '../records/index.js';
import type { About } from './facts.js';

const lists = { setup: 'setups', setting: 'settings', workload: 'workloads', measure: 'measures', part: 'parts', phase: 'phases' } as const;

/** The name shown for an id, the id itself where the record has none. */
export function nameOf(about: About, field: KeyField, id: string): string {
  return about[lists[field]].get(id)?.name ?? id;
}

/** "Core temperature", "Board power", "Fan speed" (not "Fans fan speed"), "1 % low frame rate". */
export function quantityName(about: About, measure: string, part: string): string {
  const m = nameOf(about, 'measure', measure);
  const p = part ? nameOf(about, 'part', part) : '';
  const stem = p.toLowerCase().replace(/s$/, '');
  if (!p || m.toLowerCase().includes(stem)) return capital(m);
  return capital(`${p} ${/^\p{Lu}\p{Ll}/u.test(m) ? m[0]!.toLowerCase() + m.slice(1) : m}`);
}

/** "lower is better", "higher is better", or nothing. */
export function betterWords(about: About, measure: string): string {
  const better = about.measures.get(measure)?.better ?? 'neither';
  return better === 'neither' ? '' : `${better} is better`;
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
