// The record as a whole: every field that episode.yaml may have, in the order in which the README explains them.
import { nearest } from '../places/index.js';
import { constantPhases } from './common-names.js';
import { keyFields } from './key.js';
import { coolant, fluid } from './coolant-shape.js';
import { whereFault } from './correction-where.js';
import { decimal, delimiter, encoding, layout } from './layout-shape.js';
import { asId, day, id, ownFolder, path, pathFault, quantity, ref, refs, text, texts } from './plain-shapes.js';
import { pictureSizes } from '../theme/index.js';
import { motion, motionOf } from './motion-shape.js';
import { shippedThemes } from './theme-shape.js';
import { byKind, choice, type Entry, fields, list, mapOf, type Read, type Shape, turned, type Written, written } from './shape.js';
import { constants, ownConstants, parameters, readings, values } from './values-shape.js';

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
const settingKinds = ['stock', 'power-limit', 'undervolt', 'overclock', 'fan-curve', 'speed', 'load-step', 'other'] as const;
export const statedKinds = [
  'raw', 'mean', 'constant', 'rise', 'difference', 'percent_change', 'points', 'percent_of', 'ratio',
  'rank', 'median', 'range', 'count', 'over_room', 'at_room', 'per_watt', 'per_price',
  'energy', 'per_energy', 'heat', 'level_sum', 'without_background', 'at_distance', 'approach',
] as const;

const statedKey = (t: string) => ((statedKinds as readonly string[]).includes(t.split('.')[0]!) ? undefined : 'unknown');

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
  date: day('Day of publication: 2026-03-14'),
  summary: text('What was found, in a sentence or two.'),
  disclosures: texts('What was lent, bought, sponsored, and by whom.'),
  method: texts('How it was tested.'),
  cautions: texts('Cautions of your own, besides those that the record calls for.'),
  versions: version,
  room: values,
  instruments: list(fields({
    name: text('Name.'), measures: texts('What it reads: measure, or measure/part.'),
    setups: refs('The setups that it was used for, where not for all.'),
    resolution: quantity('Smallest step it shows: 0.1 W'), accuracy: text('Limits of error as its sheet prints them: ±1 %, ±0.5 °C, ±(0.5 % + 2 digits), ±1 % of range 3000 W, not stated'),
    level: text('Share of cases for which the sheet promises that, where it says so: 95 %. Else the error may lie anywhere within the limits.'),
    class: choice(['1', '2'], 'Class of a sound level meter (IEC 61672-1): levels closer together than its limits at 1 kHz, 0.7 dB or 1 dB, are about the same.', [1, 2]),
    'one per': choice(['setup', 'record'], 'setup where each setup has its own (sensors of a product under test): then its errors do not cancel between setups.'),
  }, { expects: 'a map of name, measures, setups, resolution, accuracy, level, class, one per', required: ['name'] }), 'What was measured with.'),
  'reference room': quantity('Room temperature that temperatures are corrected to, besides what was read: 21 °C'),
  digits: choice(['read', 'earned'], 'read: figures are shown as fine as their readings. earned: as fine as their uncertainty allows.'),
  setups: named({
    kind: choice(['arrangement', 'product'], 'arrangement (open bench, small case) or product.'),
    sample: text('Which sample was tested.'), obtained,
    price: quantity('Price with its currency: $499'),
    'price date': day('Day on which the price was seen.'),
    constants: ownConstants, coolant: fluid,
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
    engine: choice(['duckdb'], 'duckdb: a database engine that you have installed helps to read large sensor logs; figures and findings are the same.'),
  }, { expects: 'a map of files, layout, for, run, engine', required: ['files', 'layout'] }), 'Sensor and frame logs.'),
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
  corrections: list(fields({
    said: text('What was said or shown, in its words: 31 K'), fact: text('Fact id, or key, of what is right.'),
    is: quantity('What was told as right: 28 K. Held against the fact.'),
    where: written('a time mark (3:12) or a text', 'Where it was said: a time mark (3:12), thumbnail, description.', whereFault, { type: 'string' }),
    date: day('Day of the correction.'), reason: text('How it came about.'),
  }, { expects: 'a map of said, fact, is, where, date, reason', required: ['said', 'fact', 'where'] }), 'What was wrong in the published episode: {said: 31 K, fact: FACT, where: 3:12}'),
  quotes: list(fields({
    from: id('The other episode.'), fact: text('Id of the fact there.'), as: keyText('Key under which it stands here.'), was: quantity('What it was when it was quoted.'),
  }, { expects: 'a map of from, fact, as, was', required: ['from', 'fact', 'as'] }), 'Results of other episodes, by fact id and not by copy.'),
  system: list(byKind({
    scalar: turned(text('A part.'), (part) => ({ part, detail: undefined, obtained: undefined })),
    map: turned(fields({ part: text('A part.'), detail: text('Which one.'), obtained }, { expects: 'a map of part, detail, obtained', required: ['part'] }), ({ fields: f }) => f.part && { part: f.part, detail: f.detail, obtained: f.obtained }),
  }, 'a part'), 'What the system was built from, in the order of a loop or a rail.'),
  coolant,
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
    facts: texts('Fact ids or keys.'), text: text('Text shown.'), motion: motionOf,
  }, { expects: 'a map of chart or graphic, …' }), 'Pictures asked for; where there are none, the usual ones are drawn.'),
  theme: turned(written('a theme', `How pictures look: ${shippedThemes.join(', ')}, a file of the episode's folder (my-theme.yaml) or one beside the episodes (../my-theme.yaml).`, themeFault, { type: 'string' }), (w) => ({ ...w, text: ownFolder(w.text) })),
  sizes: list(choice(pictureSizes.map((s) => `${s.width}x${s.height}`), 'Width and height in pixels.'), 'Sizes in which pictures are made; all where nothing is said.', true),
  motion,
  accept: list(fields({ finding: id('Code of the finding.'), subject: text('Key, fact id or name it is about.'), reason: text('Why it is accepted.') }, { expects: 'a map of finding, subject, reason', required: ['finding', 'subject', 'reason'] }), 'Findings accepted, each at one place and with a reason.'),
  thresholds: mapOf(quantity('The value.'), 'thresholds by name', () => undefined, 'Thresholds of checks, where they should not be the usual ones.'),
  severities: mapOf(choice(['error', 'warning', 'note', 'off'], 'How much it weighs.'), 'severities by finding', asId, 'How much a finding weighs here.'),
  also: texts('A second unit system beside the first: [°F, gal/min, in]'),
}, { expects: 'a record with its title', says: 'The test record of one episode.', required: ['title'] });
export type RecordDraft = Read<typeof recordShape>;

function themeFault(t: string): string | undefined {
  const file = ownFolder(t).replace(/^\.\.\//, '');
  if (/\.ya?ml$/i.test(file)) return /^\.\.\/.*\//.test(ownFolder(t)) ? `"${t}" is neither in the episode's folder nor beside the episodes` : pathFault(file);
  if ((shippedThemes as readonly string[]).includes(t)) return undefined;
  const near = nearest(t, shippedThemes);
  return `there is no theme "${t}"${near ? `; did you mean ${near}?` : `; there are ${shippedThemes.join(', ')}, and files that end in .yaml`}`;
}

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

