// A ranked list at the right, so that the left of the footage stays free.
import { basisOf, bestOf, closeNotes, type Fact, factName, type Facts, isFact, isMeasured, type Key, nameOf, phaseNote, type PictureRequest, splitKey } from '../facts/index.js';
import { capHeight, type Line, measure, mostRows } from '../theme/index.js';
import { showNumber } from '../quantities/index.js';
import { type Composer, lowerLeft, move } from './compose.js';
import type { Graphic } from './graphic.js';
import { betterOf, differing, inCommon, sentence, where } from './words.js';

/** From row to row; closer where that makes room for what stands below. */
const pitches = { usual: 104, least: 96 };
const barHeight = 10;
const least = 640;

export const ranking: Graphic = {
  kind: 'ranking',
  says: 'a ranked list beside the footage (a measure, or `facts`)',
  takes: { facts: { least: 2, most: 60 }, setups: true, settings: true, readings: true },
  rows: (request, facts) => factsOf(request, facts).length,
  compose(request, facts, sheet) {
    const all = rowsOf(request, facts, sheet);
    if (!all) return undefined;
    const { slice } = request;
    const rows = slice ? all.slice(slice.from, slice.to) : all;
    if (rows.length > mostRows) return sheet.complain('too-many-rows', `picture "${request.name}" would rank ${rows.length}, and ${mostRows} are the most that can be read on a phone; name fewer`);
    const { stage, gaps } = sheet;
    const { content, panel: fullPanel, padding, space, type } = stage;
    const first = rows[0]!;
    const { measure: measureId } = splitKey(first.fact.subject)!;
    const differs = differing(all.map((r) => r.fact.subject));
    const unit = first.fact.unit.symbol;
    const title = (request.title ?? factName(facts.about, first.fact) + (first.fact.kind === 'mean' && !differs.includes('phase') ? phaseNote(facts, splitKey(first.fact.subject)!) : '')) + (slice ? ` (${slice.part} of ${slice.parts})` : '');
    const phase = splitKey(first.fact.subject)!.phase;
    const common = inCommon(facts, splitKey(first.fact.subject)!, differs);
    const basis = basisOf(facts, rows.map((r) => r.fact));
    const better = facts.about.measures.get(measureId)?.better ?? 'neither';
    const comparable = !differs.includes('workload');
    const won = comparable ? bestOf(facts, measureId, all.map((r) => r.fact)) : {};
    const close = comparable && better !== 'neither' ? closeNotes(facts, all.map((r) => r.fact), (f) => all.find((r) => r.fact === f)?.place?.shown, rows.map((r) => r.fact)) : [];
    const named = rows.map((r) => ({ ...r, name: where(facts, splitKey(r.fact.subject)!, differs) || nameOf(facts.about, 'phase', phase), text: showNumber(r.fact.value, r.fact.decimals) }));
    const valueWidth = Math.max(...named.map((r) => measure(r.text, type.value)));
    const rankWidth = better === 'neither' ? 0 : Math.max(...named.map((r) => measure(r.place?.shown ?? '', type.value))) + space.small;
    const nameWidth = Math.max(...named.map((r) => measure(r.name, type.name)));
    const limit = content.right - content.left;
    const headline = Math.min(measure(title, type.title), 1000);
    const width = stage.narrow ? limit : Math.min(limit, Math.max(least, headline, rankWidth + nameWidth + space.large + valueWidth));
    const x = content.right - width;

    const head = sheet.block(title, type.title, 'text', { x, top: content.top, width, most: stage.narrow ? 3 : 2 });
    const under = sheet.block([unit, betterOf(facts, first.fact)].filter(Boolean).join(' · ') || ' ', type.small, 'quiet', { x, top: head.bottom + gaps.line + 6, width, most: 2 });
    const lines: Line[] = [...head.lines, ...under.lines];
    const bars: { x: number; y: number; width: number; height: number; colour: string }[] = [];
    const greatest = Math.max(...all.map((r) => r.fact.value.toNumber()));
    const nameRoom = width - rankWidth - valueWidth - space.small;
    const names = named.map((r) => sheet.block(r.name, type.name, 'text', { x: x + rankWidth, top: 0, width: nameRoom, most: stage.id === 'wide' ? 1 : 2 }));
    const belows = names.map((n) => n.bottom - capHeight * type.name.size);
    const footText = [common, basis.runs, basis.room, ...close].filter(Boolean).join(' · ');
    const foot = footText ? sheet.block(sentence(footText), type.small, 'quiet', { x, top: 0, width, most: 5 }) : undefined;
    const start = under.bottom + gaps.part;
    const end = capHeight * type.value.size + 20 + (foot ? barHeight + gaps.part + foot.bottom : barHeight);
    const taken = start - content.top + belows.reduce((sum, b) => sum + b, end) + padding.top + padding.bottom;
    const pitch = Math.max(pitches.least, Math.min(pitches.usual, Math.floor((fullPanel.height - taken) / Math.max(1, rows.length - 1))));
    let top = start;
    named.forEach((r, i) => {
      const lead = r.fact === won.fact;
      const below = belows[i]!;
      if (r.place && rankWidth) lines.push(...sheet.block(r.place.shown, type.value, 'quiet', { x, top, width: rankWidth }).lines);
      lines.push(...move(names[i]!.lines, top));
      lines.push(...sheet.block(r.text, type.value, lead ? 'highlight' : 'text', { x: content.right, top, width: valueWidth + 1, anchor: 'end' }).lines);
      const value = r.fact.value.toNumber();
      if (greatest > 0 && value >= 0) bars.push({ x: x + rankWidth, y: top + below + capHeight * type.value.size + 20, width: ((width - rankWidth) * value) / greatest, height: barHeight, colour: lead ? 'highlight' : 'muted' });
      top += pitch + below;
    });
    const bottom = top - pitch + end;
    if (foot) lines.push(...move(foot.lines, bottom - foot.bottom));
    const height = bottom - content.top + padding.top + padding.bottom;
    if (height > fullPanel.height) sheet.complain(rows.length > 2 ? 'too-many-rows' : 'label-too-long', `picture "${request.name}" is ${Math.ceil(height - fullPanel.height)} px too high; name fewer rows or shorten its names`);
    const { panel, shift } = stage.narrow ? lowerLeft(stage, width, bottom) : beside();
    const moved = move(lines, shift);
    return {
      title, lines: moved,
      panel,
      alt: `${title}${unit ? ` in ${unit}` : ''}. ${named.map((r) => `${r.place ? `${r.place.shown}: ` : ''}${r.name}, ${r.fact.shown}`).join('; ')}.${footText ? ` ${sentence(footText)}.` : ''}`,
      facts: [...named.flatMap((r) => [r.fact.id, ...(r.place ? [r.place.id] : [])]), ...basis.facts],
      table: { head: ['Place', '', title], rows: named.map((r) => [r.place?.shown ?? '', r.name, r.fact.shown]) },
      model: { lines: moved, bars: bars.map((b) => ({ ...b, y: b.y + shift })) },
    };

    /** At the right and in the middle of its height: the left of the footage stays free. */
    function beside(): ReturnType<typeof lowerLeft> {
      const y = Math.round(fullPanel.y + (fullPanel.height - height) / 2);
      return { shift: y + padding.top - content.top, panel: { x: x - padding.side, y, width: width + 2 * padding.side, height } };
    }
  },
};

interface Ranked {
  fact: Fact;
  place?: Fact;
}

function rowsOf(request: PictureRequest, facts: Facts, sheet: Composer): Ranked[] | undefined {
  for (const id of request.facts ?? []) sheet.fact(facts, id);
  const found = factsOf(request, facts);
  if (request.facts && found.length < request.facts.length) return undefined;
  if (found.length < 2) return sheet.complain('picture-empty', `picture "${request.name}" has ${found.length ? 'only one value' : 'nothing'} to rank`);
  const first = found[0]!;
  const odd = found.find((f) => f.unit.id !== first.unit.id);
  if (odd) return sheet.complain('picture-empty', `picture "${request.name}" would rank ${first.shown} with ${odd.shown}`, odd.id);
  const better = facts.about.measures.get(splitKey(first.subject)!.measure)?.better ?? 'neither';
  const sign = better === 'lower' ? 1 : -1;
  const sorted = found.sort((a, b) => sign * a.value.compare(b.value));
  const operand = (f: Fact): string => (request.facts ? `(${f.id})` : f.subject);
  return sorted.map((fact) => {
    const place = better === 'neither' ? undefined : facts.derive('rank', [operand(fact), ...sorted.filter((f) => f !== fact).map(operand)], 'better');
    return { fact, ...(place && isFact(place) && { place }) };
  });
}

function factsOf(request: PictureRequest, facts: Facts): Fact[] {
  return request.facts ? request.facts.map((id) => facts.get(id)).filter(isFact) : matching(request, facts).map((k) => facts.value(k)).filter(isFact);
}

function matching(request: PictureRequest, facts: Facts): Key[] {
  return facts.keys().filter((key) => {
    const p = splitKey(key)!;
    return isMeasured(facts, key) && p.measure === request.measure && p.phase === (request.phase ?? 'load')
      && (request.part === undefined || p.part === request.part) && (request.workload === undefined || p.workload === request.workload)
      && (!request.setups || request.setups.includes(p.setup)) && (!request.settings || request.settings.includes(p.setting));
  });
}
