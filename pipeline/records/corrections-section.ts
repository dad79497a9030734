// What was said wrong in a published episode, and the fact that is right.
import { type Context, usualUnit } from './context.js';
import type { Correction } from './episode.js';
import { splitKey } from './key.js';
import type { References } from './references.js';
import { unitOfKind } from './said-section.js';
import { quantityOf } from './values.js';

/** Which facts there are is for the checks to tell: here a fact is a text, a key with fields left out being completed. */
export function readCorrections(ctx: Context, refs: References): Correction[] {
  return (ctx.fields.corrections ?? []).flatMap(({ fields: f, place }) => {
    if (!f.said || !f.fact || !f.where) return [];
    const fact = refs.expand(f.fact.text.trim());
    const m = /^([a-z_]+)(?:\.[a-z-]+)?:([^~]+)/.exec(fact);
    const is = f.is && quantityOf(f.is, ctx.reader, m ? unitOfKind(ctx, m[1]!, m[2]) : usualUnit(ctx, splitKey(fact)?.measure ?? ''));
    return [{
      said: f.said.text.trim(), saidPlace: f.said.place, fact, factPlace: f.fact.place, where: f.where.text.trim(), place,
      ...(is && { is: { quantity: is, place: f.is!.place } }), ...(f.date && { date: f.date.text }), ...(f.reason && { reason: f.reason.text.trim() }),
    }];
  });
}
