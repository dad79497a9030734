// The layouts of the record to what the log reader takes.
import type { Encoding, LogColumn, LogLayout, LogTime, LogWindow, SteadyRule } from '../logs/index.js';
import { findUnit, readQuantity, unit } from '../quantities/index.js';
import { type Context, usualUnit } from './context.js';
import { readFrames } from './frames-shape.js';
import type { LayoutDraft } from './layout-shape.js';
import { columnOf, readEnergies, readThrottle } from './power-shape.js';
import type { Entry, Written } from './shape.js';
import { readSteady } from './steady-shape.js';
import { unknownUnit } from './tables.js';
import { quantityOf } from './values.js';

export function readLayouts(ctx: Context, entries: readonly Entry<LayoutDraft>[]): Map<string, LogLayout> {
  return new Map(entries.map((e) => [e.key.text, readLayout(ctx, e)]));
}

function readLayout(ctx: Context, { key, value }: Entry<LayoutDraft>): LogLayout {
  const { fields: f, keys } = value;
  const { reader, names } = ctx;
  const known = (w: Written): boolean => w.text === 'skip' || names.use('phase', w.text, w.place);
  const map = f.phases?.fields.map;
  map?.forEach((e) => known(e.value));
  if (f.phase) known(f.phase);
  if (!f.columns && !f.frames) reader.fail(key.place, 'record-missing', `the layout "${key.text}" needs "columns" or "frames"`, { subject: key.text });
  if (f.columns && !f.time) reader.fail(key.place, 'record-missing', `the layout "${key.text}" needs "time": a column, or every, or rate`, { subject: key.text });
  if (f.columns && !f.phases && !f.phase && !f.windows) reader.fail(key.place, 'record-missing', `the layout "${key.text}" needs "phases", "windows" or "phase", to say what is idle and what is load`, { subject: key.text });
  const decimalComma = f.decimal?.value === 'comma' || f.decimal?.value === ',';
  const delimiter = f.delimiter?.text === 'tab' ? '\t' : f.delimiter?.text ?? ',';
  if (decimalComma && delimiter === ',') reader.fail(f.decimal!.place, 'record-form', 'a decimal comma needs another delimiter; say delimiter: ";" or tab', { subject: key.text });
  const columns = (f.columns ?? []).flatMap((e) => {
    const c = e.value && readColumn(ctx, e.key, e.value.reads, e.value.take?.value ?? 'mean');
    return c ? [c] : [];
  });
  const by = f.phases?.fields.by && columnOf(ctx, f.phases.fields.by, columns);
  if (f.phases && !f.phases.fields.column === !f.phases.fields.by) reader.fail(keys.phases!, 'record-missing', 'phases needs "column" or "by", and not both', { subject: key.text });
  if (by) for (const phase of ['idle', 'load']) names.use('phase', phase, f.phases!.fields.by!.place);
  if (!f.phases && !f.phase) {
    const found = f.windows?.find((e) => /^\s*steady\b/.test(e.value.text));
    if (found) reader.fail(found.value.place, 'record-missing', `to find where ${found.key.text} is steady the layout has to say the phases: a column or a quantity that tells them (phases: {by: power/board}), or phase: ${found.key.text} where the log holds nothing else`, { subject: key.text });
  }
  const rule = f.steady && readSteady(ctx, f.steady, columns, keys.steady!);
  const throttle = f.throttle && readThrottle(ctx, f.throttle, columns);
  return {
    name: key.text, place: key.place, decimalComma, delimiter,
    ...(f.encoding && { encoding: f.encoding.value as Encoding }),
    ...(f.comment && { comment: f.comment.text }),
    skip: Number(f.skip?.text ?? 0), under: Number(f.under?.text ?? 0),
    header: f.header?.value !== 'false',
    missing: new Set((f.missing ?? []).map((m) => m.text)),
    ...(f.time && { time: readTime(ctx, f.time) }),
    ...(f.phases?.fields.column && {
      phaseColumn: {
        at: { name: f.phases.fields.column.text, place: f.phases.fields.column.place }, place: keys.phases!,
        ...(map && { map: new Map(map.map((e) => [e.key.text, e.value.text])) }),
      },
    }),
    ...(by && { phasesBy: { column: columns.indexOf(by), place: f.phases!.fields.by!.place } }),
    ...(f.phase && { phase: f.phase.text }),
    windows: (f.windows ?? []).flatMap((e) => {
      const w = names.use('phase', e.key.text, e.key.place) ? readWindow(ctx, e, rule, (own) => (own || !f.steady ? readSteady(ctx, f.steady, columns, e.value.place, own) : undefined)) : undefined;
      return w ? [w] : [];
    }),
    ...(rule && { steady: rule }),
    columns, energies: readEnergies(ctx, f.energy ?? [], columns),
    ...(throttle && { throttle }),
    ...(f.frames?.fields.column && { frames: readFrames(ctx, f.frames) }),
  };
}


function readTime(ctx: Context, { fields: f, place }: NonNullable<LayoutDraft['fields']['time']>): LogTime | undefined {
  const { reader } = ctx;
  if (f.every || f.rate) {
    const q = quantityOf(f.every ?? f.rate!, reader);
    const want = f.every ? 'duration' : 'frequency';
    if (!q) return undefined;
    if (q.unit.dimension !== want || q.value.sign() <= 0) {
      reader.fail((f.every ?? f.rate!).place, 'value-form', f.every ? 'expected the time between two lines (250 ms)' : 'expected lines per second (4 Hz)', { said: (f.every ?? f.rate!).text });
      return undefined;
    }
    const base = q.value.times(q.unit.factor).toNumber();
    return { kind: 'steps', seconds: f.every ? base : 1 / base };
  }
  if (!f.column) {
    reader.fail({ ...place, endLine: place.line }, 'record-missing', 'time needs "column", "every" or "rate"');
    return undefined;
  }
  const at = { name: f.column.text, place: f.column.place };
  const said = f.unit?.text ?? 's';
  if (said === 'clock' || said === 'iso') return { kind: said, at };
  const u = findUnit(said);
  if (!u || u.dimension !== 'duration') {
    reader.fail(f.unit!.place, 'unit-unknown', `"${said}" is no unit of time; expected s, ms, min, clock or iso`, { said });
    return undefined;
  }
  return { kind: 'elapsed', at, unit: u };
}

/** "temperature/core °C": measure, part, perhaps a constant's phase, and the unit. */
function readColumn(ctx: Context, at: Written, reads: Written, take: LogColumn['take']): LogColumn | undefined {
  const { reader, names } = ctx;
  const m = /^(\S+)(?:\s+(.+))?$/s.exec(reads.text.trim())!;
  const [measure = '', part = '', phase] = m[1]!.split('/');
  if (m[1]!.split('/').length > 3) {
    reader.fail(reads.place, 'record-form', `expected measure/part and unit (temperature/core °C), found "${reads.text}"`, { said: reads.text });
    return undefined;
  }
  const known = [names.use('measure', measure, reads.place), names.use('part', part, reads.place), phase === undefined || names.use('phase', phase, reads.place)];
  const found = m[2] ? findUnit(m[2]) : usualUnit(ctx, measure);
  if (!found) {
    if (m[2]) reader.findings.push(unknownUnit('unit-unknown', reads.place, m[2]));
    else reader.fail(reads.place, 'unit-missing', `the unit of column "${at.text}" is missing; write it behind: ${reads.text} °C`, { said: reads.text });
    return undefined;
  }
  return known.every(Boolean) ? { at: { name: at.text, place: at.place }, measure, part, unit: found, take, ...(phase !== undefined && { phase }) } : undefined;
}

/** "last 60 s", "first 60 s", "30 s to 150 s", "1:00 to 3:00", "from 10 s", "steady", "steady to 1 K in 60 s", each also "of load". */
function readWindow(ctx: Context, { key, value: w }: Entry<Written>, rule: SteadyRule | undefined, ownRule: (own?: { change: string; within: string }) => SteadyRule | undefined): LogWindow | undefined {
  const { reader, names } = ctx;
  const found = /^steady(?:\s+to\s+(.+?)\s+(?:in|within)\s+(.+?))?(?:\s+of\s+(\S+))?$/.exec(w.text.trim());
  if (found) {
    if (found[3] && !names.use('phase', found[3], w.place)) return undefined;
    const by = found[1] ? ownRule({ change: found[1], within: found[2]! }) : rule ?? ownRule();
    return by && { phase: key.text, place: w.place, ...(found[3] && { of: found[3] }), steady: { rule: by, finds: true } };
  }
  const m = /^(?:(last|first|from)\s+(.+?)|(.+?)\s*(?:\bto\b|–)\s*(.+?))(?:\s+of\s+(\S+))?$/.exec(w.text.trim());
  const seconds = (text: string): number | undefined => {
    const q = readQuantity(text, unit('s'));
    return 'quantity' in q && q.quantity.unit.dimension === 'duration' && q.quantity.value.sign() >= 0 ? q.quantity.value.times(q.quantity.unit.factor).toNumber() : undefined;
  };
  const a = m ? seconds(m[2] ?? m[3]!) : undefined;
  const b = m?.[4] ? seconds(m[4]) : undefined;
  if (!m || a === undefined || (m[4] !== undefined && b === undefined)) {
    reader.fail(w.place, 'record-form', `"${w.text}" is no window; write last 60 s, first 60 s, 30 s to 150 s, 1:00 to 3:00, or steady`, { said: w.text });
    return undefined;
  }
  if ((b !== undefined && b <= a) || (m[1] !== 'from' && b === undefined && a <= 0)) {
    reader.fail(w.place, 'record-form', `the window "${w.text}" is empty`, { said: w.text });
    return undefined;
  }
  if (m[5] && !names.use('phase', m[5], w.place)) return undefined;
  const cut = m[1] === 'last' ? { last: a } : m[1] === 'first' ? { from: 0, to: a } : m[1] === 'from' ? { from: a } : { from: a, to: b };
  return { phase: key.text, place: w.place, ...(m[5] && { of: m[5] }), ...(rule && { steady: { rule, finds: false } }), ...cut };
}
