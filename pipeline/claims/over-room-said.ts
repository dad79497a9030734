// "The chip was 41 degrees over the room", where another part is told over the room and is called so: how the chip's figure is counted, and no name.
import type { Mention } from '../script/index.js';
import type { Lexicon, Name } from './lexicon.js';

/** Right behind a figure, after a part that is measured in plain degrees was named. */
export function overRoomSaid(low: readonly string[], n: Name, all: readonly Name[], mentions: readonly Mention[], lex: Lexicon): boolean {
  if (!/^(?:over|above)$/.test(low[n.from]!) || !/^(?:room|ambient|intake|air)$/.test(low[n.to - 1]!) || !n.meanings.every((m) => m.fields.length === 1 && m.fields[0] === 'part')) return false;
  const figure = mentions.find((m) => m.to === n.from && m.unit?.dimension.startsWith('temperature'));
  if (!figure) return false;
  const part = all.findLast((o) => o.to <= figure.from && o.meanings.some((m) => m.own && m.fields[0] === 'part'));
  return part !== undefined && part.meanings.some((m) => m.own && m.fields[0] === 'part' && m.slots.every((s) => lex.warm.has(s.value)));
}
