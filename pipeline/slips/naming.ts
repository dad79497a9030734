// Keys in plain words, as messages name them.
import { type About, type Key, keyFields, nameOf, quantityName, splitKey } from '../facts/index.js';

/** "Core temperature, load (Open bench, Stock, Test scene)". */
export function tell(about: About, key: Key): string {
  const at = splitKey(key);
  if (!at) return key;
  const named = [quantityName(about, at.measure, at.part), at.phase && lower(nameOf(about, 'phase', at.phase))].filter(Boolean).join(', ');
  const where = (['setup', 'setting', 'workload'] as const).map((f) => at[f] && nameOf(about, f, at[f])).filter(Boolean).join(', ');
  return where ? `${named} (${where})` : named;
}

/** "core temperature", within a sentence. */
export function what(about: About, key: Key): string {
  const at = splitKey(key);
  return at ? lower(quantityName(about, at.measure, at.part)) : key;
}

/** Only what sets `key` apart from `other`: "Stock", "Load". */
export function tellDifference(about: About, key: Key, other: Key): string {
  const a = splitKey(key);
  const b = splitKey(other);
  if (!a || !b) return key;
  const differing = keyFields.filter((f) => a[f] !== b[f] && a[f]);
  return differing.length ? differing.map((f) => nameOf(about, f, a[f])).join(', ') : tell(about, key);
}

/** Capitals stay where they are a symbol's ("VRM"). */
function lower(name: string): string {
  return /^[A-Z][a-z]/.test(name) ? name[0]!.toLowerCase() + name.slice(1) : name;
}
