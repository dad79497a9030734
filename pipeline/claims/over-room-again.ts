// What was just told over room temperature goes on to be, of another thing or setting.
//   "… so 19 above the room. The Larch's only 7 above."     above what was said already
//   "That is 40 degrees over the room. Before it was 48."
import { type Context, withCue } from './context.js';
import type { Reading } from './read.js';

/** A figure read so, where it fits nothing otherwise; an alarm about it as a plain one is none. */
export function overRoomAgain(c: Context, index: number, r: Reading, read: (c: Context) => Reading): Reading {
  const { mention: m, cue } = c.parsed.said[index]!;
  if (r.verdict === 'agrees' || c.now.said[0]?.kind !== 'over_room' || m.type !== 'cardinal' || (m.unit && !m.unit.dimension.startsWith('temperature'))) return r;
  const above = cue.op === 'change' && /^(?:above|over)$/.test(cue.because) && !(cue.base && cue.base.to > cue.base.from);
  if (cue.op !== 'value' && !above) return r;
  const { base: _base, way: _way, ...rest } = cue;
  const again = read(withCue(c, index, { ...rest, op: 'value', because: '', overRoom: true }));
  if (again.verdict === 'agrees' && again.chosen?.term.kind === 'over_room') return again;
  return above && r.verdict === 'disagrees' ? { ...r, verdict: 'untied', why: 'it goes on from what was told over the room' } : r;
}
