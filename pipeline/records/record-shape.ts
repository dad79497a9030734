// The record as a whole: every field that episode.yaml may have, in the order in which the README explains them.
import { encodings } from '../logs/index.js';
import { constantPhases } from './common-names.js';
import { idRule, isId, keyFields } from './key.js';
import { byKind, choice, defined, type Entry, fields, list, mapOf, type Read, type Shape, turned, type Written, written } from './shape.js';

const asId = (text: string) => (isId(text) ? undefined : `"${text}" cannot be an id: ${idRule}`);
const text = (says: string) => written('a text', says);
const texts = (says: string) => list(written('a text'), says, true);
const id = (says: string) => written('an id', says, asId, { type: ['string', 'number'] });
/** A name that stands elsewhere in the record; `Names` tells whether it does. */
const ref = (says: string) => written('an id', says, undefined, { type: ['string', 'number'] });
const refs = (says: string) => list(ref('An id.'), says, true);
const quantity = (says: string) => written('a value with its unit (61 °C)', says, undefined, { type: ['string', 'number'] });
const path = (says: string) => turned(written('a path', says, (t) => pathFault(ownFolder(t)), { type: 'string' }), (w) => ({ ...w, text: ownFolder(w.text) }));
const ownFolder = (t: string) => t.replace(/^(\.\/)+/, '');

/** What keeps a path from being read: only files of the episode's own folder are. */
export function pathFault(path: string): string | undefined {
  if (/[\u0000-\u001f]/.test(path)) return 'a path may not contain control characters';
  if (path.includes('\\')) return `write "${path.replace(/\\/g, '/')}": paths have forward slashes`;
  if (/^[A-Za-z][A-Za-z0-9+.-]*:/.test(path)) return `"${path}" is no path within the episode's folder`;
  if (path.startsWith('/') || path.startsWith('~')) return `"${path}" must be relative to the episode's folder`;
  const parts = path.split('/');
  if (parts.includes('..')) return `"${path}" leaves the episode's folder`;
  if (parts.some((p) => p === '' || p === '.')) return `"${path}" has an empty step; write it without "./" and "//"`;
  return undefined;
}

/** One value; several runs as one text or a list; or by run or phase, one level within another. */
export type Values = { one: Written } | { list: Written[] } | { by: Entry<Values>[] };

const oneValue: Shape<Values> = turned(written('values (67 67 68 °C)', 'One value, or one a run: 67 67 68 °C', undefined, { type: ['string', 'number'] }), (one) => ({ one }));
const listed: Shape<Values> = turned(list(written('a value'), 'One value a run.'), (l) => ({ list: l }));
const byRun: Shape<Values> = defined('runs', byKind({
  scalar: oneValue, list: listed,
  map: turned(mapOf(oneValue, 'values by run', asId), (by) => ({ by })),
}, 'values (67 67 68 °C), a list, or a map by run'));
const values: Shape<Values> = defined('values', byKind({
  scalar: oneValue, list: listed,
  map: turned(mapOf(byRun, 'values by phase or run', asId), (by) => ({ by })),
}, 'values (67 67 68 °C), a list, or a map by phase or run'));

/** `measure`, `measure/part` or `measure/part/phase`. */
function measurePath(most: number): (text: string) => string | undefined {
  return (t) => {
    const parts = t.split('/');
    if (parts.length > most) return most === 2 ? 'expected measure or measure/part' : 'expected measure, measure/part or measure/part/phase';
    if (parts[0] === '') return 'a measure comes first (temperature/core)';
    const odd = parts.find((p) => p !== '' && !isId(p));
    return odd === undefined ? undefined : `"${odd}" cannot be an id: ${idRule}`;
  };
}

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

const readings: Shape<ScopedBlock[]> = byKind({
  list: turned(list(block, 'Blocks of readings, each with its `for`.'), (blocks) => blocks.map((b) => ({ block: b }))),
  map: turned(mapOf(block, 'blocks of readings by setup/setting/workload', pathScope), (entries) => entries.map(({ key, value }) => ({ path: key, block: value }))),
}, 'a list of blocks with `for`, or a map by setup/setting/workload', 'The measured values: several runs each, as people write them (67 67 68 °C).');

const constants: Shape<ScopedBlock[]> = byKind({
  list: turned(list(block, 'Constants with `for`.'), (blocks) => blocks.map((b) => ({ block: b }))),
  map: turned(block, (b) => [{ block: b }]),
}, 'a map by measure/part/phase, or a list of such maps with `for`', 'Limits, targets, rated values: power/board/limit: 250 W.');

const nameFields = { name: text('The name shown; made from the id where it is left out.'), spoken: texts('How it is said aloud; the first one is used for narration.') };

function named<F extends Record<string, Shape<unknown>>>(more: F, expects: string, says: string) {
  const full = fields({ ...nameFields, ...more }, { expects });
  type Full = Read<typeof full>;
  const bare = (place: Written['place']): Full => ({ fields: {}, keys: {}, rest: [], unknown: 0, place });
  const value = byKind<Full>({
    scalar: turned(written('a name'), (w) => ({ ...bare(w.place), fields: { name: w } as Full['fields'] })),
    map: full, nothing: bare,
  }, `a name or ${expects}`);
  return byKind<Entry<Full>[]>({
    list: turned(list(id('An id.'), 'Ids only.'), (l) => l.map((key) => ({ key, value: bare(key.place) }))),
    map: mapOf(value, `${expects} by id`, asId),
  }, `a list of ids, or a map by id`, says);
}

const obtained = choice(['bought', 'lent', 'sponsored', 'given', 'own'], 'How it was come by.');
const parameters = defined('parameters', fields({}, { expects: 'values by measure/part', says: 'Values by measure/part: {power/board: 200 W}', rest: { key: measurePath(2), value: values, pattern: '^[^/]+(/[^/]*)?$' } }));
const settingKinds = ['stock', 'power-limit', 'undervolt', 'overclock', 'fan-curve', 'speed', 'load-step', 'other'] as const;
export const statedKinds = [
  'raw', 'mean', 'constant', 'rise', 'difference', 'percent_change', 'points', 'percent_of', 'ratio',
  'rank', 'median', 'range', 'count', 'over_room', 'per_watt', 'per_price',
] as const;

const statedKey = (t: string) => ((statedKinds as readonly string[]).includes(t.split('.')[0]!) ? undefined : 'unknown');

const delimiter = written('a delimiter', 'What separates the columns: one character, or "tab".', (t) => (t === 'tab' || [...t].length === 1 ? undefined : `"${t}" is not one character; write "," or ";" or tab`), { type: 'string' });
const decimal = choice(['point', 'comma', '.', ','], 'Decimal sign: point (67.5) or comma (67,5).');
const encoding = choice(encodings, 'Character encoding; UTF-8 where nothing is said, a byte order mark is understood.');
const whole = (says: string) => written('a whole number', says, (t) => (/^\d{1,6}$/.test(t) ? undefined : `"${t}" is not a whole number`), { type: 'integer', minimum: 0 });
const column = written('a heading or a column number', 'Heading of the column, or its number from 1 where the log has no header.', undefined, { type: ['string', 'integer'] });

type ColumnDraft = { reads: Written; take: { value: 'mean' | 'max' | 'min' | 'last' | 'increase' } | undefined } | undefined;
const columnRead = byKind<ColumnDraft>({
  scalar: turned(written('measure/part and unit (temperature/core °C)', 'What the column holds, and its unit: temperature/core °C'), (reads) => ({ reads, take: undefined })),
  map: turned(fields({
    reads: written('measure/part and unit (temperature/core °C)', 'What the column holds, and its unit: temperature/core °C'),
    take: choice(['mean', 'max', 'min', 'last', 'increase'], 'What one run gives: the mean over the window (default), its largest, smallest or last value, or how much a counter grew.'),
  }, { expects: 'a map of reads, take', required: ['reads'] }), ({ fields: f }) => f.reads && { reads: f.reads, take: f.take }),
}, 'measure/part and unit (temperature/core °C)');

const windowText = written('a window (last 60 s)', 'What counts: last 60 s; first 60 s; 30 s to 150 s; 1:00 to 3:00; with "of load" cut from that phase.', undefined, { type: 'string' });

const layout = fields({
  delimiter, decimal, encoding,
  comment: written('the start of a comment line', 'Lines that begin with this are passed over.'),
  skip: whole('Lines before the headings that are passed over.'), under: whole('Lines under the headings that are passed over, such as a line of units.'),
  header: choice(['true', 'false'], 'Whether a line of headings stands first; true where nothing is said.', [true, false]),
  missing: texts('What stands in a cell for "no value", besides nothing: N/A, -'),
  time: fields({
    column, unit: text('s, ms, min …; clock for h:m:s, over midnight too; iso for 2026-03-14T10:00:00.25. Where nothing is said: s.'),
    every: quantity('Time from one line to the next, where the log has no time column: 250 ms'),
    rate: quantity('Lines per second, where the log has no time column: 4 Hz'),
  }, { expects: 'a map of column and unit, or every, or rate', says: 'Where the time stands, or the sample rate.' }),
  phases: fields({
    column, map: mapOf(ref('A phase, or skip.'), 'phases by what stands in the column', () => undefined, 'What stands in the column, and the phase it means; lines with anything else are left out.'),
  }, { expects: 'a map of column, map', required: ['column'], says: 'The column that says the phase.' }),
  phase: ref('The whole log is this phase.'),
  windows: mapOf(windowText, 'windows by phase', asId, 'What counts of each phase: {idle: last 15 s, load: last 60 s}; without a phase column, of the log: {load: 1:00 to 3:00}'),
  columns: mapOf(columnRead, 'what the columns hold, by heading or number', () => undefined, 'What the columns hold: {core_temp_c: temperature/core °C}; columns left out are not read.'),
  frames: fields({
    column, unit: text('ms where nothing is said.'),
    phase: ref('Phase of the frames; load where nothing is said.'),
    average: written('measure/part', 'Where the mean rate goes, frames over time: frame_rate/average', measurePath(2), { type: 'string' }),
    low: mapOf(written('a definition', 'slowest 1 % (mean rate of these frames); p99 frame time; p1 frame rate; percentiles of type 7 where nothing is said: p99 frame time, type 6'), 'definitions by measure/part', measurePath(2), 'Low figures with their definition: {frame_rate/low: slowest 1 %}'),
    each: written('measure/part', 'Keeps every frame as a trace: frame_time', measurePath(2), { type: 'string' }),
    skip: whole('Frames left out at the beginning, such as a warm-up.'),
  }, { expects: 'a map of column, unit, phase, average, low, each, skip', required: ['column'], says: 'A log of frame durations, one a line.' }),
}, { expects: 'a layout', says: 'How a log is laid out.' });
export type LayoutDraft = Read<typeof layout>;

const logScope = fields({
  setup: ref('Setup.'), setting: ref('Setting.'), workload: ref('Workload.'),
}, { expects: 'a map of setup, setting, workload', says: 'What the logs are about, besides what {setting} and the like in the file names say.' });

const table = byKind({
  scalar: turned(path('A table.'), (file) => ({ file, delimiter: undefined, decimal: undefined, encoding: undefined })),
  map: turned(fields({ file: path('A table.'), delimiter, decimal, encoding }, { expects: 'a map of file, delimiter, decimal, encoding', required: ['file'] }), ({ fields: f }) => f.file && { file: f.file, delimiter: f.delimiter, decimal: f.decimal, encoding: f.encoding }),
}, 'a path', 'A table, with its delimiter, decimal sign and encoding where they are not comma, point and UTF-8.');

const version = byKind<Entry<Written>[]>({
  map: mapOf(written('a version', 'A version.'), 'versions by name', () => undefined),
  list: turned(list(fields({ name: text('Name.'), version: text('Version.') }, { expects: 'a map of name, version', required: ['name', 'version'] }), 'Versions.'),
    (l) => l.flatMap(({ fields: f }) => (f.name && f.version ? [{ key: f.name, value: f.version }] : []))),
}, 'versions by name', 'Firmware, driver and workload versions: {driver: 12.4}');

const keyText = (says: string) => written('a key (setup/setting/workload/measure/part/phase)', says, undefined, { type: 'string' });

export const recordShape = fields({
  title: text('Title of the episode.'),
  date: written('a day (2026-03-14)', 'Day of publication: 2026-03-14', dayFault, { type: 'string', format: 'date' }),
  summary: text('What was found, in a sentence or two.'),
  disclosures: texts('What was lent, bought, sponsored, and by whom.'),
  method: texts('How it was tested.'),
  cautions: texts('Cautions of your own, besides those that the record calls for.'),
  versions: version,
  room: values,
  instruments: list(fields({
    name: text('Name.'), measures: texts('What it reads: measure, or measure/part.'),
    resolution: quantity('Smallest step it shows: 0.1 W'), accuracy: text('As its sheet says: ±1 %'),
  }, { expects: 'a map of name, measures, resolution, accuracy', required: ['name'] }), 'What was measured with.'),
  setups: named({
    kind: choice(['arrangement', 'product'], 'arrangement (open bench, small case) or product.'),
    sample: text('Which sample was tested.'), obtained,
    price: quantity('Price with its currency: $499'),
    'price date': written('a day (2026-03-14)', 'Day on which the price was seen.', dayFault, { type: 'string', format: 'date' }),
    constants: parameters2(),
  }, 'a map of name, spoken, kind, …', 'Physical arrangements or products under test.'),
  settings: named({
    kind: choice(settingKinds, 'What kind of setting it is.'), note: text('A remark.'),
    ...Object.fromEntries(constantPhases.map((p) => [p, parameters])) as Record<(typeof constantPhases)[number], typeof parameters>,
  }, 'a map of name, spoken, kind, limit, target, offset, rated, set, note', 'How things were configured, each with its parameters.'),
  workloads: named({}, 'a map of name, spoken', 'What the hardware was made to do.'),
  measures: named({
    better: choice(['lower', 'higher', 'neither'], 'Which end is better.'), matters: quantity('Smallest difference that matters: 1 K'),
    unit: text('Unit of values written without one.'), definition: text('How it is defined.'),
  }, 'a map of name, spoken, better, matters, unit, definition', 'What was read, where it differs from the usual.'),
  parts: named({}, 'a map of name, spoken', 'Where it was read: core, hotspot, board …'),
  phases: named({}, 'a map of name, spoken', 'When it was read: idle, load, first-minute …'),
  constants,
  readings,
  tables: list(table, 'Tables of readings with the header setup,setting,workload,measure,part,phase,run,value,unit', true),
  names: list(table, 'Tables of names with the header kind,id,spoken', true),
  layouts: mapOf(layout, 'layouts by name', asId, 'How the logs are laid out.'),
  logs: list(fields({
    files: turned(written('a path or a pattern', 'A log, or a pattern of several: logs/{setting}-run{run}.csv', (t) => pathFault(ownFolder(t).replace(/[{}]/g, '')), { type: 'string' }), (w) => ({ ...w, text: ownFolder(w.text) })),
    layout: ref('Name of its layout.'), for: logScope, run: id('The run, where {run} in the file name does not say it; 1 where nothing is said.'),
  }, { expects: 'a map of files, layout, for, run', required: ['files', 'layout'] }), 'Sensor and frame logs.'),
  aside: list(fields({
    reading: keyText('Key of the reading; fields may be left out where only one reading fits.'),
    for: fields(Object.fromEntries(keyFields.map((f) => [f, ref('An id.')])) as Record<(typeof keyFields)[number], ReturnType<typeof ref>>, { expects: `a map of ${keyFields.join(', ')}`, says: 'All readings with these.' }),
    run: id('The run.'), reason: text('Why it does not count.'),
  }, { expects: 'a map of reading or for, run, reason', required: ['run', 'reason'] }), 'Runs set aside: kept and reported, never averaged.'),
  stated: list(fields({
    is: quantity('The value as it was said: 29 K'), where: text('Where it was said: thumbnail'),
  }, {
    expects: 'a kind of fact with its keys, is, where', required: ['is'],
    hint: `; expected is, where, or a kind of fact: ${statedKinds.join(', ')}`,
    rest: { key: statedKey, near: statedKinds, value: list(keyText('A key, or a fact id in brackets.'), 'Subject first, base last.', true), pattern: `^(${statedKinds.join('|')})(\\.[a-z-]+)?$` },
  }), 'What you have already said or written elsewhere: {rise: [KEY, KEY], is: 29 K}'),
  quotes: list(fields({
    from: id('The other episode.'), fact: text('Id of the fact there.'), as: keyText('Key under which it stands here.'), was: quantity('What it was when it was quoted.'),
  }, { expects: 'a map of from, fact, as, was', required: ['from', 'fact', 'as'] }), 'Results of other episodes, by fact id and not by copy.'),
  system: list(byKind({
    scalar: turned(text('A part.'), (part) => ({ part, detail: undefined, obtained: undefined })),
    map: turned(fields({ part: text('A part.'), detail: text('Which one.'), obtained }, { expects: 'a map of part, detail, obtained', required: ['part'] }), ({ fields: f }) => f.part && { part: f.part, detail: f.detail, obtained: f.obtained }),
  }, 'a part'), 'What the system was built from, in the order of a loop or a rail.'),
  curves: mapOf(fields({
    name: text('The name shown.'),
    of: axis('What is set: Fan duty in %'), against: axis('Against what: Core in °C'),
    points: byKind<Entry<Written>[]>({
      map: mapOf(quantity('Value there.'), 'values by point', () => undefined),
      list: turned(list(list(quantity('at, value'), 'A pair.'), 'Pairs.'), (pairs, reader, around) => pairs.flatMap((p) => {
        if (p.length === 2) return [{ key: p[0]!, value: p[1]! }];
        reader.fail(p[0]?.place ?? around, 'record-form', `a point of a curve is a pair [at, value], found ${p.length} values`);
        return [];
      })),
    }, 'points ({40: 30, 60: 55})', 'Points: {40: 30, 60: 55}'),
  }, { expects: 'a map of name, of, against, points', required: ['of', 'against', 'points'] }), 'curves by name', asId, 'Control curves, such as fan speed against a temperature.'),
  script: path('The script, a text file.'),
  thumbnail: text('The line on the thumbnail.'),
  description: text('The description, or a text file (description.md) that holds it.'),
  chapters: text('The chapters, or a text file (chapters.txt) that holds them.'),
  pictures: list(fields({
    chart: id('Kind of chart.'), graphic: id('Kind of graphic.'), name: id('Part of the file name.'), title: text('Title.'),
    setups: refs('Which setups, in this order.'), settings: refs('Which settings, in this order.'), workload: ref('Workload.'), measure: ref('Measure.'), part: ref('Part.'), phase: ref('Phase.'),
    facts: texts('Fact ids or keys.'), text: text('Text shown.'),
  }, { expects: 'a map of chart or graphic, …' }), 'Pictures asked for; where there are none, the usual ones are drawn.'),
  accept: list(fields({ finding: id('Code of the finding.'), subject: text('Key, fact id or name it is about.'), reason: text('Why it is accepted.') }, { expects: 'a map of finding, subject, reason', required: ['finding', 'subject', 'reason'] }), 'Findings accepted, each at one place and with a reason.'),
  thresholds: mapOf(quantity('The value.'), 'thresholds by name', () => undefined, 'Thresholds of checks, where they should not be the usual ones.'),
  severities: mapOf(choice(['error', 'warning', 'note', 'off'], 'How much it weighs.'), 'severities by finding', asId, 'How much a finding weighs here.'),
  also: texts('A second unit system beside the first: [°F, gal/min, in]'),
}, { expects: 'a record with its title', says: 'The test record of one episode.', required: ['title'] });
export type RecordDraft = Read<typeof recordShape>;

/** "Fan duty in %", or label and unit apart. */
function axis(says: string) {
  return byKind<{ label: string; unit: Written } | undefined>({
    scalar: turned(written('a label with its unit (Fan duty in %)', says, (t) => (/\S\s+in\s+\S/.test(t) ? undefined : `"${t}" has no unit; write it as Fan duty in %`)), (w) => {
      const cut = w.text.lastIndexOf(' in ');
      return { label: w.text.slice(0, cut).trim(), unit: { ...w, text: w.text.slice(cut + 4).trim() } };
    }),
    map: turned(fields({ label: text('Label.'), unit: text('Unit.') }, { expects: 'a map of label, unit', required: ['label', 'unit'] }), ({ fields: f }) => f.label && f.unit && { label: f.label.text, unit: f.unit }),
  }, 'a label with its unit (Fan duty in %)', says);
}

function parameters2() {
  return fields({}, { expects: 'values by measure/part/phase', says: 'Constants of this one: power/board/limit: 250 W', rest: { key: measurePath(3), value: values, pattern: '^[^/]+(/[^/]*){0,2}$' } });
}

function dayFault(t: string): string | undefined {
  if (isDay(t)) return undefined;
  const m = /^(\d{4})[-./](\d{1,2})[-./](\d{1,2})$/.exec(t) ?? /^(?<d>\d{1,2})\.(?<m>\d{1,2})\.(?<y>\d{4})$/.exec(t);
  const [y, month, d] = m?.groups ? [m.groups.y!, m.groups.m!, m.groups.d!] : [m?.[1] ?? '', m?.[2] ?? '', m?.[3] ?? ''];
  const meant = `${y}-${month.padStart(2, '0')}-${d.padStart(2, '0')}`;
  return `"${t}" is not a day; write ${isDay(meant) ? meant : 'it as 2026-03-14'}`;
}

/** A day of the calendar, ISO 8601. */
export function isDay(t: string): boolean {
  const m = /^(\d{4})-(\d\d)-(\d\d)$/.exec(t);
  if (!m) return false;
  const [y, month, day] = [Number(m[1]), Number(m[2]), Number(m[3])];
  const leap = (y % 4 === 0 && y % 100 !== 0) || y % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return month >= 1 && month <= 12 && day >= 1 && day <= days[month - 1]!;
}
