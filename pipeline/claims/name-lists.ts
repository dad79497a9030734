// Names side by side: "the lid, the base and the spout".
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';

export interface NameList { slot: number; values: string[]; from: number; to: number }

/** Runs of names of one slot joined by commas and "and", at least two. */
export function nameLists(g: Grid, p: Parsed, bySlot: readonly (readonly Hit[])[]): NameList[] {
  const out: NameList[] = [];
  if (!bySlot.some((own) => own.length > 1)) return out;
  // "read bandwidth, write bandwidth and copy bandwidth": the quantity may stand beside each.
  const quantity = new Set(p.names.filter((n) => n.meanings.some((m) => m.own && m.fields.length === 1 && m.fields[0] === 'measure')).flatMap((n) => Array.from({ length: n.to - n.from }, (_, k) => n.from + k)));
  bySlot.forEach((own, slot) => {
    if (own.length < 2) return;
    let run: NameList | undefined;
    for (const h of own) {
      // "Over the room, the lid is at 31": the room is no thing beside the lid.
      if (h.baseOf >= 0 && g.slots[slot]!.field === 'part') continue;
      const joined = run && between(p, run.to, h.from, quantity);
      if (run && joined && !run.values.includes(h.value)) { run.values.push(h.value); run.to = h.to; } else if (!run || h.from >= run.to) {
        if (run && run.values.length > 1) out.push(run);
        run = { slot, values: [h.value], from: h.from, to: h.to };
      }
    }
    if (run && run.values.length > 1) out.push(run);
  });
  return out;
}

const glue = new Set([',', 'and', 'or', 'the', 'a', 'an', 'then', '&', 'to', 'by', 'on', 'at', 'in', 'for', 'of', 'my', 'its', 'finally', 'lastly']);
function between(p: Parsed, from: number, to: number, quantity: ReadonlySet<number>): boolean {
  let joint = from === to || p.low.slice(from, to).every((w) => w === 'the' || w === 'a' || w === 'an');
  for (let i = from; i < to; i++) {
    if (!glue.has(p.low[i]!) && !quantity.has(i)) return false;
    if (/^(?:,|and|or|then|&|to)$/.test(p.low[i]!)) joint = true;
  }
  return joint;
}
