// What a careful viewer asks of any figure: how many runs, and how warm was the room.
import { showNumber } from '../quantities/index.js';
import type { Fact } from './fact.js';
import { type Facts, isFact } from './facts.js';
import { isMeasured } from './measured.js';
import { nameOf } from './naming.js';
import { splitKey } from '../records/index.js';

export interface Basis {
  /** "mean of 3 runs", "one run each"; empty where nothing was averaged. */
  runs: string;
  /** "3", "2 to 3"; empty where nothing was averaged. */
  count: string;
  /** "room 21.0 °C", "room 20.8 to 21.4 °C", "room not recorded"; empty where no temperature is shown. */
  room: string;
  facts: string[];
}

export function basisOf(facts: Facts, shown: readonly Fact[]): Basis {
  const used: string[] = [];
  const keys = [...new Set(shown.flatMap((f) => f.keys))].filter((k) => isMeasured(facts, k));
  const quoted = keys.filter((k) => facts.isQuoted(k));
  const counts = keys.filter((k) => !facts.isQuoted(k)).map((k) => facts.derive('count', [k], 'runs')).filter(isFact).sort((a, b) => a.value.compare(b.value));
  const few = counts[0];
  const many = counts.at(-1);
  let count = '';
  let runs = '';
  if (few && many) {
    used.push(few.id);
    if (many.value.compare(few.value) !== 0) used.push(many.id);
    count = few.shown === many.shown ? many.shown : `${few.shown} to ${many.shown}`;
    runs = many.shown === '1' ? 'one run each' : `mean of ${count} runs`;
  }
  let room = '';
  if (shown.some((f) => f.unit.dimension.startsWith('temperature'))) {
    const rooms = [...new Set(keys.map((k) => facts.roomFor(k)).filter((k) => k !== undefined))];
    const low = rooms.length ? facts.derive('range', rooms, 'low') : undefined;
    const high = rooms.length ? facts.derive('range', rooms, 'high') : undefined;
    if (isFact(low) && isFact(high)) {
      const same = low.shown === high.shown;
      used.push(...(same ? [low.id] : [low.id, high.id]));
      room = same ? `room ${high.shown}` : `room ${showNumber(low.value, low.decimals)} to ${high.shown}`;
    } else room = 'room temperature not recorded';
  }
  const from = quoted.length === 0 ? '' : quoted.length === keys.length ? 'from an earlier episode' : `${quotedName(facts, keys, quoted)} from an earlier episode`;
  return { runs: [runs, from].filter(Boolean).join(' · '), count, room, facts: used };
}

/** "Old paste" where a setup or a setting holds the quoted ones and no other. */
function quotedName(facts: Facts, all: readonly string[], quoted: readonly string[]): string {
  const own = all.filter((k) => !quoted.includes(k)).map((k) => splitKey(k)!);
  for (const field of ['setup', 'setting'] as const) {
    const ids = [...new Set(quoted.map((k) => splitKey(k)![field]))];
    if (ids.length === 1 && ids[0] && own.every((p) => p[field] !== ids[0])) return nameOf(facts.about, field, ids[0]);
  }
  return 'in part';
}
