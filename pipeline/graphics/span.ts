// From idle to load on one scale: where it starts, where it ends, and how far that is.
import { basisOf, beforeRounding, factName, type Fact, type Facts, isFact, nameOf, splitKey } from '../facts/index.js';
import { capHeight, type Line, measure } from '../theme/index.js';
import type { Exact } from '../quantities/index.js';
import type { Composer } from './compose.js';
import { lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';
import { operandsOf } from './operands.js';
import { Stack } from './stack.js';
import { differing, inCommon, sentence, signed, where } from './words.js';

const track = 16;
const dot = 22;

export const span: Graphic = {
  kind: 'span',
  says: 'from one end to the other on a common scale, such as idle to load (one to four rises or differences in `facts`)',
  takes: { facts: { least: 1, most: 4, kinds: ['rise', 'difference', 'over_room'] } },
  compose(request, facts, sheet) {
    const found = (request.facts ?? []).map((id) => sheet.fact(facts, id)).filter((f) => f !== undefined);
    if (found.length < (request.facts ?? []).length) return undefined;
    const rows = found.map((fact) => ({ fact, ends: operandsOf(facts, fact) })).filter((r) => r.ends.length === 2);
    const [first] = rows;
    if (!first || rows.length < found.length) return sheet.complain('picture-empty', `picture "${request.name}" needs rises or differences of two readings`);
    const odd = rows.find((r) => r.ends.some((e) => e.unit.id !== first.ends[0]!.unit.id));
    if (odd) return sheet.complain('picture-empty', `picture "${request.name}" would put ${first.ends[0]!.unit.id} and ${odd.ends.map((e) => e.unit.id).join(' and ')} on one scale`, odd.fact.id);
    const { stage, gaps, fullWidth } = sheet;
    const { content, space, type } = stage;
    const values = rows.flatMap((r) => r.ends.map((e) => e.value));
    const scale = scaleOf(facts, rows.map((r) => r.ends[0]!), values);
    const at = (v: Exact): number => dot + ((fullWidth - 2 * dot) * (v.toNumber() - scale.from)) / (scale.to - scale.from || 1);
    const differs = differing(found.map((f) => f.subject));
    const title = request.title ?? factName(facts.about, first.fact);
    const basis = basisOf(facts, found);
    const common = inCommon(facts, splitKey(first.fact.subject)!, differs);
    const footText = [legend(facts, first.ends), scale.says, common, basis.runs, basis.room, beforeRounding(found)].filter(Boolean).join(' · ');

    const head = new Stack(sheet, { x: content.left, top: content.top, width: fullWidth });
    head.put(title, type.title, 'text', 0, 2);
    const lines: Line[] = head.lines;
    const spans: { y: number; from: number; to: number; start: number; end: number }[] = [];
    let top = head.bottom + gaps.part + 10;
    for (const { fact, ends: [end, start] } of rows as { fact: Fact; ends: [Fact, Fact] }[]) {
      const name = rows.length > 1 ? where(facts, splitKey(fact.subject)!, differs) || factName(facts.about, fact) : '';
      const change = fact.kind === 'difference' ? signed(fact, fact.shown) : plus(fact);
      const changeWidth = measure(change, type.value);
      lines.push(...sheet.block(change, type.value, 'highlight', { x: content.right, top, width: changeWidth + 1, anchor: 'end' }).lines.map((l) => ({ ...l, build: 'figures' })));
      const [a, b] = [content.left + at(start.value), content.left + at(end.value)];
      let y = top + capHeight * type.value.size + gaps.line + dot + 6;
      if (name) {
        // Of several rows each has its figures in one line above its track: below it they would take the height of another row.
        const ways = `${start.shown} to ${end.shown}`;
        const waysRight = content.right - changeWidth - space.medium;
        const waysWidth = measure(ways, type.name);
        const beside = measure(name, type.name) + space.medium + waysWidth <= waysRight - content.left;
        const block = sheet.block(name, type.name, 'text', { x: content.left, top, width: beside ? waysRight - waysWidth - space.medium - content.left : waysRight - content.left, most: 2 });
        const waysTop = beside ? top : block.bottom + space.tight;
        const told = sheet.block(ways, type.name, 'quiet', beside ? { x: waysRight, top: waysTop, width: waysWidth + 1, anchor: 'end' } : { x: content.left, top: waysTop, width: waysRight - content.left });
        lines.push(...block.lines, ...told.lines.map((l) => ({ ...l, build: 'figures' })));
        y = told.bottom + space.small + dot;
        top = y + dot + gaps.part - 4;
      } else {
        lines.push(...labels(sheet, start, end, a, b, y + dot + space.tight));
        top = y + dot + space.tight + capHeight * type.value.size + gaps.part + 12;
      }
      spans.push({ y, from: Math.min(a, b), to: Math.max(a, b), start: a, end: b });
    }
    const foot = sheet.block(sentence(footText), type.small, 'quiet', { x: content.left, top: top - 4, width: fullWidth, most: 4 });
    const { panel, shift } = lowerLeft(stage, fullWidth, foot.bottom);
    sheet.within(panel, request.name, 'name fewer facts or shorten its title');
    const moved = move([...lines, ...foot.lines], shift);
    return {
      title, panel, lines: moved,
      alt: `${title}. ${rows.map(({ fact, ends: [end, start] }) => `${[where(facts, splitKey(fact.subject)!, differs), `${start!.shown} to ${end!.shown}`].filter(Boolean).join(': ')}, ${signed(fact, fact.shown)}`).join('; ')}. ${sentence(footText)}.`,
      facts: [...rows.flatMap((r) => [r.fact.id, ...r.ends.map((e) => e.id)]), ...basis.facts],
      table: { head: ['', 'From', 'To', title], rows: rows.map(({ fact, ends: [end, start] }) => [where(facts, splitKey(fact.subject)!, differs), start!.shown, end!.shown, signed(fact, fact.shown)]) },
      model: { lines: moved, spans: move(spans, shift).map((s) => ({ ...s, length: s.to - s.from })), left: content.left, width: fullWidth, track, dot },
    };
  },
};

/** A rise is always told with its sign, so that it cannot be read as a temperature. */
function plus(fact: Fact): string {
  return fact.value.sign() > 0 ? `+${fact.shown}` : fact.shown;
}

/** Temperatures start at the room, where it is known and colder; all else at zero. */
function scaleOf(facts: Facts, ends: readonly Fact[], values: readonly Exact[]): { from: number; to: number; says: string } {
  const numbers = values.map((v) => v.toNumber());
  const to = Math.max(...numbers, 0);
  const least = Math.min(...numbers);
  const temperature = ends[0]!.unit.dimension === 'temperature';
  const rooms = temperature ? [...new Set(ends.map((e) => facts.roomFor(e.subject)))].map((k) => (k ? facts.value(k) : undefined)).filter((f) => isFact(f ?? { why: '' })) as Fact[] : [];
  const room = rooms[0];
  if (room && rooms.every((r) => r.shown === room.shown) && room.value.toNumber() <= least) return { from: room.value.toNumber(), to, says: 'the scale starts at the room' };
  const from = Math.min(0, least);
  return { from, to, says: from === 0 ? `the scale starts at 0 ${ends[0]!.unit.symbol}`.trim() : '' };
}

/** "Left idle, right load". */
function legend(facts: Facts, [end, start]: readonly Fact[]): string {
  const differs = differing([start!.subject, end!.subject]);
  const [a, b] = [start!, end!].map((f) => {
    const p = splitKey(f.subject)!;
    return where(facts, p, differs.filter((d) => d !== 'phase')) || (differs.includes('phase') ? lower(nameOf(facts.about, 'phase', p.phase)) : '');
  });
  return a && b ? `hollow: ${a}, filled: ${b}` : '';
}

function lower(name: string): string {
  return /^\p{Lu}\p{Ll}+$/u.test(name) ? name.toLowerCase() : name;
}

/** The two values below their dots, pushed apart where they would touch. */
function labels(sheet: Composer, start: Fact, end: Fact, a: number, b: number, top: number): Line[] {
  const { content, space, type } = sheet.stage;
  const [left, right] = a <= b ? [{ fact: start, x: a }, { fact: end, x: b }] : [{ fact: end, x: b }, { fact: start, x: a }];
  const [wl, wr] = [measure(left.fact.shown, type.value), measure(right.fact.shown, type.value)];
  let xl = Math.max(content.left, left.x - wl / 2);
  let xr = Math.min(content.right - wr, right.x - wr / 2);
  const touch = xl + wl + space.small - xr;
  if (touch > 0) {
    xl = Math.max(content.left, Math.min(xl - touch / 2, content.right - wr - wl - space.small));
    xr = Math.max(xl + wl + space.small, Math.min(xr, content.right - wr));
  }
  return [[left, xl, wl], [right, xr, wr]].flatMap(([side, x, w]) => {
    const { fact } = side as { fact: Fact };
    return sheet.block(fact.shown, type.value, fact === end ? 'text' : 'quiet', { x: x as number, top, width: (w as number) + 1 }).lines;
  });
}
