// A reading's address: setup/setting/workload/measure/part/phase, any of them empty.

/** Six fields joined by "/", e.g. `open-bench/stock/scene/temperature/core/load`. */
export type Key = string;

export const keyFields = ['setup', 'setting', 'workload', 'measure', 'part', 'phase'] as const;
export type KeyField = (typeof keyFields)[number];
export type KeyParts = Record<KeyField, string>;

export function makeKey(parts: Partial<KeyParts>): Key {
  return keyFields.map((f) => parts[f] ?? '').join('/');
}

/** Undefined when the text has not exactly six fields. */
export function splitKey(key: Key): KeyParts | undefined {
  const fields = key.split('/');
  if (fields.length !== keyFields.length) return undefined;
  return Object.fromEntries(keyFields.map((f, i) => [f, fields[i]!])) as KeyParts;
}

/** The key with some fields replaced. */
export function withFields(key: Key, change: Partial<KeyParts>): Key {
  return makeKey({ ...splitKey(key), ...change });
}
