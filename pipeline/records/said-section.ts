// What refers to readings: stated values, runs set aside, quotes, acceptances, pictures.
import { findUnit, type Unit, unit } from '../quantities/index.js';
import { type Context, usualUnit } from './context.js';
import type { Acceptance, PictureRequest, Quote, Reading, Stated } from './episode.js';
import { isId, type KeyField, keyFields, splitKey } from './key.js';
import type { References } from './references.js';
import { count } from './tables.js';
import { quantityOf } from './values.js';

/** Operands that a kind takes at least and at most. */
const operands: Record<string, [least: number, most: number]> = {
  raw: [1, 1], constant: [1, 1], mean: [1, Infinity], median: [1, Infinity], range: [1, Infinity], count: [1, Infinity], rank: [2, Infinity],
};
const two: [number, number] = [2, 2];

export function readStated(ctx: Context, refs: References): Stated[] {
  const { reader } = ctx;
  return (ctx.fields.stated ?? []).flatMap(({ fields: f, rest, unknown, place }) => {
    if (rest.length !== 1) {
      if (unknown) return [];
      const at = rest[1]?.key.place ?? { ...place, endLine: place.line };
      reader.fail(at, 'record-form', rest.length ? `a stated value is of one kind, found ${rest.map((e) => e.key.text).join(' and ')}` : 'a stated value needs its kind and what it is of: rise: [KEY, KEY]');
      return [];
    }
    const { key, value } = rest[0]!;
    const [kind = ''] = key.text.split('.');
    const found = value.map((w) => refs.operand(w));
    const idle = kind === 'rise' && found.length === 1 && found[0] !== undefined ? refs.idleOf(found[0]) : undefined;
    if (idle !== undefined) found.push(idle);
    else if (kind === 'rise' && found.length === 1) {
      if (found[0] !== undefined) reader.fail(value[0]!.place, 'reading-unknown', `there is no idle reading of ${found[0]}; name both: rise: [KEY, KEY]`, { said: value[0]!.text, subject: found[0] });
      return [];
    }
    const [least, most] = operands[kind] ?? two;
    if (found.length < least || found.length > most) {
      const wanted = least === most ? String(least) : `at least ${least}`;
      reader.fail(key.place, 'record-form', `a value of the kind ${kind} takes ${wanted} ${least === 1 && most === 1 ? 'key' : 'keys'}, subject first and base last; found ${count(found.length, 'key')}`, { said: key.text });
      return [];
    }
    const quantity = f.is && quantityOf(f.is, reader, unitOfKind(ctx, kind, found[0]));
    if (!quantity || found.some((o) => o === undefined)) return [];
    return [{ kind: key.text, operands: found as string[], quantity, ...(f.where && { where: f.where.text }), place, valuePlace: f.is!.place }];
  });
}

export function unitOfKind(ctx: Context, kind: string, subject: string | undefined): Unit | undefined {
  if (kind === 'percent_change' || kind === 'percent_of') return unit('%');
  if (kind === 'points') return unit('points');
  if (kind === 'ratio') return unit('x');
  if (kind === 'rank' || kind === 'count') return unit('1');
  if (kind.startsWith('per_')) return undefined;
  const usual = usualUnit(ctx, splitKey(subject?.split('#')[0] ?? '')?.measure ?? '');
  const between = kind === 'rise' || kind === 'difference' || kind === 'over_room';
  return between && usual?.difference ? findUnit(usual.difference) : usual;
}

/** Marks the readings that are set aside; one that no reading fits is a finding. */
export function setAside(ctx: Context, refs: References, readings: readonly Reading[]): void {
  const { reader } = ctx;
  for (const { fields: f, place } of ctx.fields.aside ?? []) {
    if (!f.run || !f.reason) continue;
    const mark = { reason: f.reason.text, place };
    let fits: Reading[];
    if (f.reading) {
      const key = refs.key(f.reading);
      if (key === undefined) continue;
      fits = readings.filter((r) => r.key === key);
    } else if (f.for && Object.keys(f.for.fields).length) {
      const wanted = Object.entries(f.for.fields) as [KeyField, { text: string }][];
      fits = readings.filter((r) => {
        const parts = splitKey(r.key)!;
        return wanted.every(([field, w]) => parts[field] === w.text);
      });
      if (fits.length === 0) {
        reader.fail(f.for.place, 'reading-unknown', 'no reading has these names');
        continue;
      }
    } else {
      reader.fail({ ...place, endLine: place.line }, 'record-missing', 'a run set aside needs "reading" or "for"');
      continue;
    }
    const hit = fits.filter((r) => r.run === f.run!.text);
    if (hit.length === 0) {
      const runs = [...new Set(fits.map((r) => r.run).filter(Boolean))];
      reader.fail(f.run.place, 'reading-unknown', `there is no run ${f.run.text} of it; ${runs.length ? `its runs are ${runs.join(', ')}` : 'it has no runs'}`, { said: f.run.text });
    }
    for (const r of hit) r.aside = mark;
  }
}

export function readQuotes(ctx: Context): Quote[] {
  const { reader, names } = ctx;
  return (ctx.fields.quotes ?? []).flatMap(({ fields: f, place }) => {
    if (!f.from || !f.fact || !f.as) return [];
    const parts = splitKey(f.as.text);
    if (!parts || keyFields.some((k) => parts[k] !== '' && !isId(parts[k]))) {
      reader.fail(f.as.place, 'record-form', `"${f.as.text}" is no key; write setup/setting/workload/measure/part/phase, empty where nothing applies`, { said: f.as.text });
      return [];
    }
    if (!keyFields.map((k) => names.use(k, parts[k], f.as!.place)).every(Boolean)) return [];
    const was = f.was && quantityOf(f.was, reader, usualUnit(ctx, parts.measure));
    return [{ episode: f.from.text, fact: f.fact.text, as: f.as.text, ...(was && { was }), place }];
  });
}

export function readAccepted(ctx: Context, refs: { expand(text: string): string }): Acceptance[] {
  return (ctx.fields.accept ?? []).flatMap(({ fields: f, place }) => (
    f.finding && f.subject && f.reason ? [{ code: f.finding.text, subject: refs.expand(f.subject.text), reason: f.reason.text, place }] : []
  ));
}

export function readPictures(ctx: Context): PictureRequest[] {
  const { reader, names } = ctx;
  const taken = new Set<string>();
  return (ctx.fields.pictures ?? []).flatMap(({ fields: f, keys, place }) => {
    const kind = f.chart ?? f.graphic;
    if (!kind || (keys.chart && keys.graphic)) {
      reader.fail(keys.graphic ?? { ...place, endLine: place.line }, 'record-form', keys.chart && keys.graphic ? 'a picture is a chart or a graphic, not both' : 'a picture needs "chart" or "graphic" with its kind');
      return [];
    }
    const lists = ([['setups', 'setup'], ['settings', 'setting']] as const).map(([field, k]) => [field, f[field]?.filter((w) => names.use(k, w.text, w.place)).map((w) => w.text)] as const);
    const ones = (['workload', 'measure', 'part', 'phase'] as const).flatMap((k) => (f[k] && names.use(k, f[k].text, f[k].place) ? [[k, f[k].text] as const] : []));
    const name = unique(f.name?.text ?? [kind.text, f.measure?.text, f.part?.text, f.phase?.text].filter(Boolean).join('-').toLowerCase().replace(/[^a-z0-9]+/g, '-'), taken);
    return [{
      kind: kind.text, medium: f.chart ? 'chart' : 'graphic', name, place,
      ...(f.title && { title: f.title.text }), ...(f.text && { text: f.text.text }), ...(f.motion && { motion: f.motion.value }),
      ...(f.facts && { facts: f.facts.map((w) => w.text) }),
      ...Object.fromEntries(lists.filter(([, l]) => l)), ...Object.fromEntries(ones),
    }];
  });
}

function unique(name: string, taken: Set<string>): string {
  let made = name;
  for (let n = 2; taken.has(made); n++) made = `${name}-${n}`;
  taken.add(made);
  return made;
}

