// Values, and the blocks of readings and constants that hold them.
import { idRule, isId } from './key.js';
import { asId, measurePath, ref, refs } from './plain-shapes.js';
import { byKind, defined, type Entry, fields, list, mapOf, type Read, type Shape, turned, type Written, written } from './shape.js';

/** One value; several runs as one text or a list; or by run or phase, one level within another. */
export type Values = { one: Written } | { list: Written[] } | { by: Entry<Values>[] };

const oneValue: Shape<Values> = turned(written('values (67 67 68 °C)', 'One value, or one a run: 67 67 68 °C', undefined, { type: ['string', 'number'] }), (one) => ({ one }));
const listed: Shape<Values> = turned(list(written('a value'), 'One value a run.'), (l) => ({ list: l }));
const byRun: Shape<Values> = defined('runs', byKind({
  scalar: oneValue, list: listed,
  map: turned(mapOf(oneValue, 'values by run', asId), (by) => ({ by })),
}, 'values (67 67 68 °C), a list, or a map by run'));
export const values: Shape<Values> = defined('values', byKind({
  scalar: oneValue, list: listed,
  map: turned(mapOf(byRun, 'values by phase or run', asId), (by) => ({ by })),
}, 'values (67 67 68 °C), a list, or a map by phase or run'));

const scope = fields({
  setup: refs('Setup, or several.'), setting: refs('Setting, or several.'), workload: refs('Workload, or several.'),
}, { expects: 'a map of setup, setting, workload', says: 'What the values below are about; leave out what does not apply.' });

const block = defined('block', fields({ for: scope, room: values, phase: ref('Phase of the values below that name none.') }, {
  expects: 'a block of readings',
  rest: { key: measurePath(3), value: values, pattern: '^[^/]+(/[^/]*){0,2}$' },
}));
type Block = Read<typeof block>;

export interface ScopedBlock {
  /** `setup/setting/workload` written as a map's key, or undefined where `for` stands in the block. */
  path?: Written;
  block: Block;
}

const pathScope = (t: string) => {
  const parts = t.split('/');
  if (parts.length > 3) return 'expected setup/setting/workload';
  const odd = parts.find((p) => p !== '' && !isId(p));
  return odd === undefined ? undefined : `"${odd}" cannot be an id: ${idRule}`;
};

export const readings: Shape<ScopedBlock[]> = byKind({
  list: turned(list(block, 'Blocks of readings, each with its `for`.'), (blocks) => blocks.map((b) => ({ block: b }))),
  map: turned(mapOf(block, 'blocks of readings by setup/setting/workload', pathScope), (entries) => entries.map(({ key, value }) => ({ path: key, block: value }))),
}, 'a list of blocks with `for`, or a map by setup/setting/workload', 'The measured values: several runs each, as people write them (67 67 68 °C).');

export const constants: Shape<ScopedBlock[]> = byKind({
  list: turned(list(block, 'Constants with `for`.'), (blocks) => blocks.map((b) => ({ block: b }))),
  map: turned(block, (b) => [{ block: b }]),
}, 'a map by measure/part/phase, or a list of such maps with `for`', 'Limits, targets, rated values: power/board/limit: 250 W.');

/** What a setting brings: the phase stands in the field's name. */
export const parameters = defined('parameters', fields({}, { expects: 'values by measure/part', says: 'Values by measure/part: {power/board: 200 W}', rest: { key: measurePath(2), value: values, pattern: '^[^/]+(/[^/]*)?$' } }));

/** What a setup brings. */
export const ownConstants = fields({}, { expects: 'values by measure/part/phase', says: 'Constants of this one: power/board/limit: 250 W', rest: { key: measurePath(3), value: values, pattern: '^[^/]+(/[^/]*){0,2}$' } });
