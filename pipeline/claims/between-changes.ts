// "The Larch loses 37 watts to it, the Elder 31; so that's 6 more for the Larch": how far the two changes just told lie apart.
import { stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import { push } from './read-value.js';

const summing = /(?:^|[,;:—–] )(?:so |and so |and |which )?(?:that's|that is|that makes|makes|it's|which is|is|meaning|leaving)(?: (?:a|an|just|only|about|around|roughly|nearly|almost|another|some|good|full))*$/;

export function betweenChanges(c: Context, index: number): Candidate[] {
  const { mention: m, cue } = c.parsed.said[index]!;
  const [a, b] = [c.done[index - 2], c.done[index - 1]];
  const told = c.parsed.said.slice(index - 2, index);
  if (cue.op !== 'change' || cue.base || m.type !== 'cardinal' || m.unit?.id === '%' || !a || !b || told.length < 2 || a.kind !== 'difference' || b.kind !== 'difference' || a.fact.unit.id !== b.fact.unit.id) return [];
  const gap = stretch(c.parsed.low, told[1]!.mention.to, m.from);
  if (!summing.test(gap) || gap.split(' ').length > 8 || !told.every((s, k) => fit(s.mention, k ? b : a)) || (m.unit && m.unit.id !== told[0]!.mention.unit?.id)) return [];
  const turned = a.fact.value.sign() !== b.fact.value.sign() && b.term.args.length === 2;
  const out: Candidate[] = [];
  push(out, c, { kind: 'difference', args: [a.term, turned ? { ...b.term, args: [b.term.args[1]!, b.term.args[0]!] } : b.term] }, 'difference', 0, a.subject, 'between the two changes told', { firm: true });
  return out;
}
