// Keys in plain words, as messages name them.
import { type About, type Key, type KeyField, keyFields, splitKey } from '../facts/index.js';

const maps = { setup: 'setups', setting: 'settings', workload: 'workloads', measure: 'measures', part: 'parts', phase: 'phases' } as const;

/** The name shown for an id; the id itself, spaced, where the record has none. */
export function nameOf(about: About, field: KeyField, id: string): string {
  return about[maps[field]].get(id)?.name ?? id.replace(/[-_]/g, ' ');
}

/** "Core temperature, load (Open bench, Stock, Test scene)". */
export function tell(about: About, key: Key): string {
  const at = splitKey(key);
  if (!at) return key;
  const quantity = what(about, key);
  const named = [quantity.charAt(0).toUpperCase() + quantity.slice(1), at.phase && lower(nameOf(about, 'phase', at.phase))].filter(Boolean).join(', ');
  const where = (['setup', 'setting', 'workload'] as const).map((f) => at[f] && nameOf(about, f, at[f])).filter(Boolean).join(', ');
  return where ? `${named} (${where})` : named;
}

/** "core temperature", and not "fan fan speed" or "ripple ripple". */
export function what(about: About, key: Key): string {
  const at = splitKey(key);
  if (!at) return key;
  const measure = lower(nameOf(about, 'measure', at.measure));
  const part = at.part && lower(nameOf(about, 'part', at.part));
  const singular = part.replace(/s$/, '');
  if (!part || measure.toLowerCase().startsWith(singular.toLowerCase())) return measure;
  return part.toLowerCase().endsWith(measure.toLowerCase()) ? part : `${part} ${measure}`;
}

/** Only what sets `key` apart from `other`: "Stock", "Load". */
export function tellDifference(about: About, key: Key, other: Key): string {
  const a = splitKey(key);
  const b = splitKey(other);
  if (!a || !b) return key;
  const differing = keyFields.filter((f) => a[f] !== b[f] && a[f]);
  return differing.length ? differing.map((f) => nameOf(about, f, a[f])).join(', ') : tell(about, key);
}

/** Capitals stay where they are a name's or a symbol's ("1 % low", "VRM"). */
function lower(name: string): string {
  return /^[A-Z][a-z]/.test(name) ? name[0]!.toLowerCase() + name.slice(1) : name;
}
