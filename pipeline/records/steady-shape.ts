// What makes a stretch of a log steady, as the record says it.
import type { LogColumn, SteadyRule } from '../logs/index.js';
import { convert, differenceUnit, readQuantity, show, unit } from '../quantities/index.js';
import type { Place } from '../places/index.js';
import type { Context } from './context.js';
import { measurePath, quantity } from './plain-shapes.js';
import { columnOf } from './power-shape.js';
import { choice, fields, type Read, type Written, written } from './shape.js';

export const steady = fields({
  rule: choice(['slope', 'mser'], 'slope: from where the quantity moves by no more than "change" within "within", until the end (default). mser: where the marginal standard error of the rest is smallest, in means of five samples.'),
  by: written('measure/part', 'The column that decides: temperature/core. The first temperature where nothing is said, or else the first column.', measurePath(2), { type: 'string' }),
  change: quantity('How far it may move: 1 K where nothing is said; 2 % for a power.'),
  within: quantity('The span in which it may: 5 min where nothing is said.'),
}, { expects: 'a map of rule, by, change, within', says: 'What "steady" means for windows: {change: 1 K, within: 5 min}. Beside windows that are given by hand, it is compared with them.' });

type SteadyDraft = Read<typeof steady>;

/** IEC 62368-1, B.1.6: steady where it moves by at most 1 K in 5 min. */
const usual = { change: '1 K', span: '5 min' };

/** The rule of the layout; `to` and `within` of a single window ("steady to 1 K in 60 s") stand above it. Undefined after a fault. */
export function readSteady(ctx: Context, draft: SteadyDraft | undefined, columns: readonly LogColumn[], place: Place, own?: { change: string; within: string }): SteadyRule | undefined {
  const { reader } = ctx;
  const f = draft?.fields;
  const able = columns.filter((c) => c.phase === undefined);
  const column = f?.by ? columnOf(ctx, f.by, columns) : able.find((c) => c.unit.dimension === 'temperature') ?? able[0];
  if (!column) {
    if (!f?.by && columns.length) reader.fail(place, 'record-form', 'no column of this layout can decide what is steady');
    return undefined;
  }
  const at = columns.indexOf(column);
  if (f?.rule?.value === 'mser' && !own) {
    const odd = f.change ?? f.within;
    if (odd) reader.fail(odd.place, 'record-form', 'the rule mser has neither "change" nor "within"', { said: odd.text });
    return { kind: 'mser', column: at, change: 0, share: false, span: 0, words: 'by the marginal standard error (MSER-5)' };
  }
  const said = (text: string, w: Written | undefined): Written => ({ ...(w ?? { place }), text } as Written);
  const change = changeOf(ctx, own ? said(own.change, undefined) : f?.change ?? said(usual.change, undefined), column, !own && !f?.change);
  const span = spanOf(ctx, own ? said(own.within, undefined) : f?.within ?? said(usual.span, undefined));
  return change && span ? { kind: 'slope', column: at, change: change.value, share: change.share, span: span.seconds, words: `at most ${change.words} in ${span.words}` } : undefined;
}

function changeOf({ reader }: Context, w: Written, column: LogColumn, isUsual: boolean): { value: number; share: boolean; words: string } | undefined {
  const own = differenceUnit(column.unit);
  const read = readQuantity(w.text, own);
  const q = 'quantity' in read ? read.quantity : undefined;
  if (q?.unit.id === '%' && q.value.sign() > 0 && column.unit.id !== '%' && !column.unit.difference) return { value: q.value.toNumber() / 100, share: true, words: show(q.value, q.unit, q.decimals) };
  const value = q && q.value.sign() > 0 ? convert(q.value, differenceUnit(q.unit), own) : undefined;
  if (value) return { value: value.toNumber(), share: false, words: show(q!.value, differenceUnit(q!.unit), q!.decimals) };
  const example = column.unit.dimension === 'temperature' ? '1 K' : column.unit.id === '%' ? '2 %' : `2 % or 5 ${own.symbol}`;
  reader.fail(w.place, 'value-form', isUsual ? `"${[column.measure, column.part].filter(Boolean).join('/')}" is no temperature; say under steady how far it may move (change: ${example})` : `"${w.text}" is no change of ${column.measure}; write it like ${example}`, { said: w.text });
  return undefined;
}

function spanOf({ reader }: Context, w: Written): { seconds: number; words: string } | undefined {
  const read = readQuantity(w.text, unit('s'));
  const q = 'quantity' in read ? read.quantity : undefined;
  if (q?.unit.dimension === 'duration' && q.value.sign() > 0) return { seconds: q.value.times(q.unit.factor).toNumber(), words: show(q.value, q.unit, q.decimals) };
  reader.fail(w.place, 'value-form', `"${w.text}" is no span of time; write it like 5 min`, { said: w.text });
  return undefined;
}
