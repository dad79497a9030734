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
  const [setup, setting, workload, measure, part, phase] = fields as [string, string, string, string, string, string];
  return { setup, setting, workload, measure, part, phase };
}

/** The key with some fields replaced. */
export function withFields(key: Key, change: Partial<KeyParts>): Key {
  return makeKey({ ...splitKey(key), ...change });
}

export const idRule = 'letters, digits, "-", "_" and "." only';

/** What may stand between the slashes of a key: nothing that keys, fact ids or file patterns give a meaning to. */
export function isId(text: string): boolean {
  return /^[\p{L}\p{N}][\p{L}\p{N}._-]*$/u.test(text);
}
