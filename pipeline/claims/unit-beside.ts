// "The lid drops to 101 degrees, so eleven less than before": a bare change right behind a figure is of its quantity.
import { stretch } from '../script/index.js';
import { type Unit } from '../quantities/index.js';
import { type Context, unitsOf } from './context.js';
import { fit } from './decide.js';

const joint = /^(?:[,—–(] )?(?:so|which is|which makes|that's|that is|and that's|or)(?: (?:that's|about|around|roughly|nearly|almost|just|only|still|some|a|good|full))*$/;

export function unitBeside(c: Context, index: number): readonly Unit[] | undefined {
  const { mention: m, cue } = c.parsed.said[index]!;
  const [figure, before] = [c.done[index - 1], c.parsed.said[index - 1]];
  if (m.unit || m.type !== 'cardinal' || cue.op !== 'change' || cue.of?.length || !before || figure?.term.kind !== 'mean' || !figure.subject || figure.fact.unit.id === '%' || !fit(before.mention, figure)) return undefined;
  if (!joint.test(stretch(c.parsed.low, before.mention.to, m.from)) || c.hits.hits.some((h) => h.segment === index && (c.grid.of.measure.includes(h.slot) || c.grid.of.part.includes(h.slot))) || c.hits.dimensions.some((d) => d.segment === index)) return undefined;
  return unitsOf({ mention: { ...m, unit: figure.subject.unit } }, true);
}
