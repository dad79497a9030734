// "Corrected to the reference room": a temperature as it would have been in the room that the record names.
import { atReferenceRoom, isFact, readId } from '../facts/index.js';
import { convert } from '../quantities/index.js';
import type { Context } from './context.js';
import type { Cell } from './grid.js';
import type { Term } from './terms.js';

const verbs: ReadonlySet<string> = new Set(['corrected', 'adjusted', 'normalised', 'normalized']);
const airs: ReadonlySet<string> = new Set(['room', 'ambient', 'air']);
const between: ReadonlySet<string> = new Set(['to', 'for', 'the', 'a', 'our', 'one', 'same', 'reference', 'temperature', 'of']);

/** The words from "corrected" to "room", as a range; undefined where a sentence has none. */
export function correctedSpan(low: readonly string[]): { from: number; to: number } | undefined {
  for (let from = 0; from < low.length; from++) {
    if (!verbs.has(low[from]!) || (low[from + 1] !== 'to' && low[from + 1] !== 'for')) continue;
    let to = from + 1;
    while (to < low.length && between.has(low[to]!)) to++;
    if (airs.has(low[to] ?? '')) return { from, to: to + 1 };
  }
  return undefined;
}

/** Undefined for what is no temperature, where the record names no room to correct to or the sentence another, and where the room was not read. */
export function correctedTerm(c: Context, cell: Cell): Term | undefined {
  if (cell.unit.dimension !== 'temperature' || cell.fixed || c.parsed.said.some((_, i) => roomCorrectedTo(c, i)?.right === false)) return undefined;
  const fact = atReferenceRoom(c.facts, cell.key);
  const operands = isFact(fact) ? readId(fact.id)?.operands : undefined;
  return operands && { kind: 'at_room', args: operands };
}

/** "Corrected to a room of 21 degrees": the number says where to, and is nothing that was read. `right` where it is the room of the record. */
export function roomCorrectedTo(c: Context, index: number): { right: boolean } | undefined {
  const span = correctedSpan(c.parsed.low);
  const m = c.parsed.said[index]!.mention;
  if (!span || m.from < span.from || m.from > span.to + 1 || (m.from > span.to && !/^(?:of|at)$/.test(c.parsed.low[span.to] ?? ''))) return undefined;
  const room = c.facts.about.referenceRoom;
  const value = room && (m.unit ? convert(room.value, room.unit, m.unit) : room.value);
  return { right: value !== undefined && m.value.equals(value.round(m.decimals)) };
}
