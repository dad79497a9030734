// A mention read as a plain value: of one reading, over the room, a median, or a constant.
import { stretch } from '../script/index.js';
import { type Fact, isFact, roomParts } from '../facts/index.js';
import { siblings } from './siblings.js';
import { correctedSpan, correctedTerm } from './corrected.js';
import { fits } from '../wording/index.js';
import { type Candidate, type Context, oddlySized, oddSize, subjectCells, unitsOf } from './context.js';
import { familyOf, familySaid } from './family.js';
import { type Cell, constantOf, firstTime } from './grid.js';
import { saysAll } from './support.js';
import { evaluate, type Term, valueOf } from './terms.js';

const runs: Record<string, string> = { first: '1', one: '1', '1': '1', second: '2', two: '2', '2': '2', third: '3', three: '3', '3': '3', fourth: '4', four: '4', '4': '4', fifth: '5', '5': '5' };

/** "the third run by itself", "run two alone". */
function runNamed({ low, tokens, said }: Context['parsed'], index: number): string | undefined {
  for (let i = 0; i < low.length; i++) {
    if (low[i] !== 'run') continue;
    // "the lid is at 61, and in the second run it hit 64": said of the figure behind it.
    if (i >= said[index]!.segment.to && said.some((s, k) => k > index && s.segment.from <= i && s.mention.from > i + 1)) continue;
    if (runs[low[i - 1] ?? ''] && low[i - 2] !== 'of' && (/^(?:the|our|my|its|in|on|,|)$/.test(low[i - 2] ?? '') || tokens[i - 2]?.possessive)) return runs[low[i - 1]!];
    if (runs[low[i + 1] ?? '']) return runs[low[i + 1]!];
  }
  return undefined;
}

/** `limit`: how much dearer than the best a reading may be. */
export function readValue(c: Context, index: number, limit?: number): Candidate[] {
  const said = c.parsed.said[index]!;
  const { cells } = subjectCells(c, index, unitsOf(said, false), limit === undefined ? {} : { limit });
  const out: Candidate[] = [];
  const run = runNamed(c.parsed, index);
  const named = said.cue.median && c.hits.hits.some((h) => h.segment <= index && c.grid.of.setup.includes(h.slot));
  const overRoom = said.cue.overRoom || (c.parsed.low.includes('room') && c.parsed.said.some((s) => s.cue.overRoom) && pairWith(c, index) !== undefined);
  const corrected = correctedSpan(c.parsed.low) !== undefined;
  // "under the 50", "above my 48": a mark that was set, before anything measured.
  const mark = /^(?:less than|more than)$/.test(said.mention.hedge?.name ?? '') && /^(?:the|my|our|that|this)$/.test(c.parsed.low[said.mention.from - 1] ?? '');
  // "it slips under my 30"
  const own = /^(?:my|our)$/.test(c.parsed.low[said.mention.from - 1] ?? '');
  const lead = said.segment.from < said.mention.from ? c.parsed.low.slice(Math.max(0, said.mention.from - 4), said.mention.from) : [];
  const saying = lead.findLastIndex((w) => w === 'says' || w === 'quotes');
  const says = saying >= 0 && lead.slice(saying + 1).every((w) => /^(?:an?|even|flat|full|round)$/.test(w)) && c.hits.hits.some((h) => h.to === said.mention.from - lead.length + saying && c.grid.of.setup.includes(h.slot));
  const loose = /^(?:less than|more than|at most|at least)$/.test(said.mention.hedge?.name ?? '');
  for (const { cell, cost: said0 } of cells) {
    const plain = !overRoom && !said.cue.median && oddlySized(c, index, cell) ? said0 + oddSize : said0 + (apartOnly(c, index, cell) ? 1.2 : 0);
    const set = cell.fixed && loose && markIs(c, cell, said);
    const cost = set ? Math.min(plain, 0) - 0.1 : mark ? plain + (cell.fixed ? -0.6 : 0.6) : plain;
    if (said.cue.median) {
      const family = named ? familyOf(c.grid, cell) : [];
      if (family.length && familySaid(c, cell)) { push(out, c, { kind: 'median', args: family.map((x) => x.key) }, 'mean', cost, cell, 'the median of them'); continue; }
      const { setup, setting } = c.grid.of;
      // "all nine results": of everything, where the words count that many.
      const counted = c.parsed.said.flatMap(({ mention: n }) => (n.type === 'cardinal' && !n.unit && n.decimals === 0 ? [n.value.toNumber()] : []));
      const sets = ([[setup, 0], [setting, 1], [[...setup, ...setting], saysAll(c) ? 0.2 : 2]] as const).map(([slots, more]) => ({ more, own: false, set: firstTime(c.grid, siblings(c.grid, cell, slots).filter((x) => x.fixed === cell.fixed)) })).filter(({ set }) => set.length > 2);
      // "two of the six, and the median is 33 for the one": of what is named beside it, not of what is ranked elsewhere.
      const beside = /^(?:for|with|on|in|of)$/.test(c.parsed.low[said.mention.to] ?? '') ? c.hits.hits.filter((h) => h.from > said.mention.to && h.from <= said.mention.to + 2 && cell.at[h.slot] === h.value).map((h) => h.slot) : [];
      for (const x of sets) x.own = beside.length > 0 && x.set.every((y) => beside.every((i) => y.at[i] === cell.at[i]));
      const whole = !beside.length && sets.some(({ set }) => counted.includes(set.length));
      for (const { set, more, own } of sets) push(out, c, { kind: 'median', args: set.map((x) => x.key) }, 'mean', cost + (own ? 0 : beside.length ? more + 1 : !whole ? more : counted.includes(set.length) ? 0 : more + 1), cell, 'the median');
      continue;
    }
    if (overRoom) {
      const over = overRoomTerm(c, cell);
      if (over) { push(out, c, over, 'rise', cost, cell, 'over the room'); continue; }
      if (c.grid.of.part.some((i) => roomParts.includes(cell.at[i]!)) && !ofTheRoom(c.parsed.low, said.mention.from)) continue;
      // Nothing but what is warm lies over the room.
      if (said.cue.overRoom && !said.mention.unit && cell.unit.dimension !== 'temperature' && !c.hits.hits.some((h) => h.segment === index && c.grid.of.measure.includes(h.slot))) continue;
    }
    // What is said to be corrected is no plain reading, even where the record does not correct it.
    if (corrected && cell.unit.dimension === 'temperature') {
      const term = correctedTerm(c, cell);
      if (term) push(out, c, term, 'mean', cost, cell, 'corrected to the reference room');
      continue;
    }
    if (run) {
      const key = `${cell.key}#${run}`;
      push(out, c, valueOf(key), 'raw', cost, cell, `run ${run}`);
    }
    push(out, c, valueOf(cell.key), cell.constant ? 'constant' : 'mean', cost + (run ? 0.8 : 0), cell, '');
    // "The Cobble says 90": what is on its label, or what it shows.
    if (says && !cell.fixed) { const set = constantOf(c.grid, cell, 'rated'); if (set) push(out, c, valueOf(set.key), 'constant', cost, set, 'what it says'); }
    if (own && !cell.fixed && cost <= 0.5) for (const role of ['limit', 'target'] as const) { const set = constantOf(c.grid, cell, role); if (set) push(out, c, valueOf(set.key), 'constant', cost - 0.2, set, 'a mark of one\'s own'); }
    if (out.length > 60) break;
  }
  return out;
}

/** "Over the room, which was at 22": what the room was, and nothing above it. */
function ofTheRoom(low: readonly string[], at: number): boolean {
  return /(?:^| )(?:which|room|ambient|itself)(?: (?:is|was|were|at|sat|sits|stayed|stays|of|itself|being|about|around))*$/.test(stretch(low, Math.max(0, at - 5), at));
}

/** "ends at 31 kelvin", where the record has one temperature in kelvin and others in degrees: none of those. */
function apartOnly(c: Context, index: number, cell: Cell): boolean {
  return c.parsed.said[index]!.mention.unit?.id === 'K' && cell.unit.id !== 'K' && c.grid.measureUnits.get(cell.at[c.grid.of.measure[0]!]!)!.has('temperature-difference');
}

/** "should stay under 70", where 70 is a limit on record. */
function markIs(c: Context, cell: Cell, said: Context['parsed']['said'][number]): boolean {
  const fact = c.facts.value(cell.key);
  return isFact(fact) && fits({ ...said.mention, hedge: undefined } as typeof said.mention, fact, { size: false, exact: true });
}

export function overRoomTerm(c: Context, cell: Cell): Term | undefined {
  if (cell.unit.dimension !== 'temperature' || cell.fixed) return undefined;
  const room = c.facts.roomFor(cell.key);
  return room && room !== cell.key ? { kind: 'over_room', args: [cell.key, room] } : undefined;
}

export function push(out: Candidate[], c: Context, term: Term, kind: string, cost: number, subject: Cell | undefined, why: string, more: Partial<Candidate> = {}): void {
  const fact: Fact | undefined = evaluate(c.facts, term);
  if (fact && isFact(fact)) out.push({ cost, term, fact, kind, sign: 0, ...(subject && { subject }), firm: false, why, ...more });
}

/** What stands between what it was and what it is. */
const becoming = /^(?:then |now |suddenly |just )?(?:becomes|became|turns into|turned into|grows into|grew into|has become|had become|gives way to|gave way to)(?: (?:about|only|nearly|almost|a|just|roughly|around))*$/;

/** The other end of "from … to …", where this mention is one. */
export function pairWith(c: Context, index: number): { first: number; second: number; way?: 'up' | 'down' } | undefined {
  const { said, low, tokens } = c.parsed;
  for (const first of [index - 1, index]) {
    const a = said[first];
    const b = said[first + 1];
    if (!a || !b || a.mention.type !== 'cardinal' || b.mention.type !== 'cardinal' || a.named || b.named) continue;
    if (a.cue.op !== 'value' && a.cue.op !== 'range' || b.cue.op !== 'value' && b.cue.op !== 'range') continue;
    if (a.mention.unit && b.mention.unit && a.mention.unit.dimension !== b.mention.unit.dimension) continue;
    const gap = low.slice(a.mention.to, b.mention.from);
    if (gap.some((_, k) => tokens[a.mention.to + k]!.kind === 'mark' && !/^[-–—→>,]$/.test(gap[k]!)) || gap.length > 9) continue;
    if (gap.some((w) => /^(?:it's|is|that's|was|are|they're)$/.test(w))) continue;
    // "31 becomes 38", "31 turns into 38"
    if (becoming.test(gap.join(' '))) return { first, second: first + 1 };
    const to = gap.lastIndexOf('to');
    if (to < 0 || to < gap.length - 4) continue;
    const before = low.slice(Math.max(a.segment.from, a.mention.from - 4), a.mention.from);
    // "down to 149, and the score drops to 20,890": two figures, each reached by itself.
    if (before.at(-1) === 'to' && gap.some((w) => /^(?:and|but|while|so)$/.test(w))) continue;
    // "holds that for 70 seconds and then sinks to 1,640": how long it took is no end.
    if (/^(?:for|after|in|within|until)$/.test(before.at(-1) ?? '')) continue;
    // "and 2.4 at the spout, down to 61": by how much, and where that leads.
    if (gap[to - 2] === ',' && /^(?:down|up)$/.test(gap[to - 1]!) && !before.includes('from')) continue;
    const down = gap.includes('down');
    const up = gap.includes('up');
    const from = before.includes('from') || gap.includes('from');
    const moves = before.some((w) => /^(?:goes|went|go|going|moves|moved|climbs|climbed|drops|dropped|falls|fell|rises|rose|shrinks|grows|grew|slips|jumps|up|down|sags|sinks)$/.test(w));
    if (before.includes('between') || before.some((w) => /^(?:stays?|stayed|ranges?|ranged|sits?|sat|hovers?|hovered|remained|varied|varies)$/.test(w))) continue;
    if (from || moves || down || up) return { first, second: first + 1, ...(down ? { way: 'down' as const } : up ? { way: 'up' as const } : {}) };
  }
  return undefined;
}
