// What the record says about the episode besides its readings.
import { convert, findUnit, type Unit, units } from '../quantities/index.js';
import { type Limits, readAccuracy, readLevel } from './accuracy.js';
import { readCoolant } from './coolant-shape.js';
import { type Context, usualUnit } from './context.js';
import type { Curve, Episode, Instrument } from './episode.js';
import type { Reader } from './document.js';
import type { Written } from './shape.js';
import { unknownUnit } from './tables.js';
import { quantityOf, unitOf } from './values.js';

type Said = Pick<Episode, 'title' | 'date' | 'summary' | 'disclosures' | 'method' | 'cautions' | 'versions' | 'instruments' | 'system' | 'curves' | 'thresholds' | 'severities' | 'secondUnits' | 'coolant' | 'referenceRoom' | 'digits'>;

export function readAbout(ctx: Context): Said {
  const { fields: f, reader } = ctx;
  const coolant = readCoolant(ctx, f.coolant);
  const said = (list: Written[] | undefined) => (list ?? []).map(({ text, place }) => ({ text, place }));
  return {
    title: f.title?.text ?? '',
    ...(f.date && { date: f.date.text }),
    ...(f.summary && { summary: f.summary.text }),
    disclosures: said(f.disclosures), method: said(f.method), cautions: said(f.cautions),
    versions: (f.versions ?? []).map((e) => ({ name: e.key.text, version: e.value.text, place: e.key.place })),
    instruments: (f.instruments ?? []).flatMap((i) => {
      const made = readInstrument(ctx, i);
      return made ? [made] : [];
    }),
    system: (f.system ?? []).flatMap((p) => (p?.part ? [{ name: p.part.text, place: p.part.place, ...(p.detail && { detail: p.detail.text }), ...(p.obtained && { obtained: p.obtained.value }) }] : [])),
    curves: (f.curves ?? []).flatMap((e) => {
      const made = readCurve(e.key, e.value.fields, reader);
      return made ? [made] : [];
    }),
    thresholds: (f.thresholds ?? []).map((e) => ({ name: e.key.text, value: e.value.text, place: e.key.place })),
    severities: (f.severities ?? []).map((e) => ({ code: e.key.text, severity: e.value.value, place: e.key.place })),
    secondUnits: secondUnits(f.also ?? [], reader),
    ...(coolant && { coolant }),
    ...referenceRoom(f['reference room'], reader),
    ...(f.digits && { digits: f.digits.value }),
  };
}

function referenceRoom(w: Written | undefined, reader: Reader): Pick<Episode, 'referenceRoom'> {
  const referenceRoom = w && quantityOf(w, reader);
  if (!referenceRoom) return {};
  if (referenceRoom.unit.dimension === 'temperature') return { referenceRoom };
  reader.fail(w.place, 'value-form', `"${w.text}" is no temperature; write it like 21 °C`, { said: w.text });
  return {};
}

function readInstrument(ctx: Context, { fields: f, place }: NonNullable<Context['fields']['instruments']>[number]): Instrument | undefined {
  if (!f.name) return undefined;
  const measures = (f.measures ?? []).filter((m) => {
    const [measure = '', part = ''] = m.text.split('/');
    return ctx.names.use('measure', measure, m.place) && ctx.names.use('part', part, m.place);
  });
  const setups = (f.setups ?? []).filter((s) => ctx.names.use('setup', s.text, s.place)).map((s) => s.text);
  const resolution = f.resolution && quantityOf(f.resolution, ctx.reader, measures.length === 1 ? usualUnit(ctx, measures[0]!.text.split('/')[0]!) : undefined);
  const limits = f.accuracy && limitsOf(f.accuracy, resolution !== undefined, ctx.reader);
  const level = f.level && levelOf(f.level, ctx.reader);
  return {
    name: f.name.text, measures: measures.map((m) => m.text), ...(setups.length && { setups }), ...(resolution && { resolution }),
    ...(f.accuracy && { accuracy: f.accuracy.text }), ...(limits && { limits }), ...(level !== undefined && { level }), ...(f.class && { class: f.class.value === '1' ? 1 : 2 }), ...(f['one per']?.value === 'setup' && { perSetup: true }), place,
  };
}

function limitsOf(w: Written, steps: boolean, reader: Reader): Limits | undefined {
  const read = readAccuracy(w.text);
  const why = read && ('why' in read ? read.why : read.digits.sign() > 0 && !steps ? `"${w.text}" counts digits; state the resolution of the instrument as well` : undefined);
  if (why) reader.fail(w.place, 'accuracy-form', why, { said: w.text });
  return !read || 'why' in read ? undefined : read;
}

function levelOf(w: Written, reader: Reader): number | undefined {
  const level = readLevel(w.text);
  if (level === undefined) reader.fail(w.place, 'accuracy-form', `"${w.text}" is no level of confidence; write it like 95 %`, { said: w.text });
  return level;
}

type CurveFields = NonNullable<Context['fields']['curves']>[number]['value']['fields'];

function readCurve(key: Written, f: CurveFields, reader: Reader): Curve | undefined {
  const of = f.of && unitOf(f.of.unit, reader);
  const against = f.against && unitOf(f.against.unit, reader);
  if (!of || !against) return undefined;
  const points = (f.points ?? []).flatMap((e) => {
    const at = quantityOf(e.key, reader, against);
    const value = quantityOf(e.value, reader, of);
    for (const [q, w, u] of [[at, e.key, against], [value, e.value, of]] as const) {
      if (q && !convert(q.value, q.unit, u)) reader.fail(w.place, 'value-form', `"${w.text}" is not in ${u.symbol}`, { said: w.text });
    }
    return at && value ? [{ at, value, place: e.key.place }] : [];
  });
  points.forEach((p, i) => {
    if (i && p.at.value.compare(points[i - 1]!.at.value) <= 0) reader.fail(p.place, 'record-form', 'the points of a curve go upward, each beyond the one before', { subject: key.text });
  });
  return {
    id: key.text, name: f.name?.text ?? key.text, place: key.place,
    of: { label: f.of!.label, unit: of }, against: { label: f.against!.label, unit: against },
    points: points.map(({ at, value }) => ({ at, value })),
  };
}

/** Every unit of a dimension to the second one asked for; differences of temperatures follow. */
function secondUnits(also: Written[], reader: Reader): Map<string, string> {
  const map = new Map<string, string>();
  const put = (second: Unit) => {
    if (second.dimension === 'money' || second.dimension === 'compound') return;
    for (const u of units.values()) if (u.id !== second.id && u.dimension === second.dimension) map.set(u.id, second.id);
  };
  for (const w of also) {
    const second = findUnit(w.text);
    if (!second) reader.findings.push(unknownUnit('unit-unknown', w.place, w.text));
    else {
      put(second);
      if (second.difference) put(findUnit(second.difference)!);
    }
  }
  return map;
}
