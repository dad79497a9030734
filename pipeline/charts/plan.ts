// Which charts suit an episode whose record asks for none, and how a chart with too many rows is split.
import { type Fact, type Facts, isFact, type Key, type KeyParts, roomParts, splitKey, withFields } from '../facts/index.js';
import { mostRows } from '../theme/index.js';
import type { ChartRequest } from './chart.js';
import { charts } from './kinds.js';
import { best } from './overlap.js';
import { select } from './rows.js';

/** About as many as an episode can show. */
const most = 12;
/** Second parts of a measure, and measures without a better end, only fill up to this. */
const enough = 7;

/** What suits the record, the most telling first. */
export function planCharts(facts: Facts): ChartRequest[] {
  const { about } = facts;
  const pairs = measuredPairs(facts);
  const lists = { main: [] as ChartRequest[], also: [] as ChartRequest[], spare: [] as ChartRequest[], kept: [] as ChartRequest[] };
  const ask = (list: ChartRequest[], request: Omit<ChartRequest, 'place'>): void => {
    list.push({ ...request, name: kebab(request.name), place: about.place });
  };
  const seen = new Set<string>();
  let idleShown = false;
  for (const { measure, part, shape } of pairs) {
    const main = !seen.has(measure) && about.measures.get(measure)?.better !== 'neither';
    const list = main ? lists.main : lists.spare;
    const grid = shape.setups.length > 1 && shape.settings.length > 1;
    const base = { measure, part, ...(grid && shape.workloads.length > 1 && { workload: shape.workloads[0]! }) };
    const roundup = grid && shape.setups.length > 3;
    const atFirst = grid ? { settings: [shape.settings[0]!] } : {};
    const overRoom = shape.idle ? [] : overRoomOf(facts, base, atFirst);
    if (shape.idle && main && !idleShown) {
      idleShown = true;
      for (const setup of grid ? shape.setups.slice(0, 2) : [undefined]) ask(list, { kind: 'bars-idle-load', name: `${measure}-${part}-idle-load ${setup ?? ''}`, ...base, ...(setup && { setups: [setup] }) });
    } else if (overRoom.length > 1) ask(list, { kind: 'ranked', name: `${measure}-${part}-over-room`, facts: overRoom });
    else if (grid && Math.min(shape.setups.length, shape.settings.length) <= 3) {
      if (roundup && seen.size === 0) ask(list, { kind: 'ranked', name: `${measure}-${part}-ranked ${shape.settings[0]!}`, ...base, ...atFirst });
      ask(list, { kind: 'bars', name: `${measure}-${part}`, ...base });
    } else ask(list, { kind: main && shape.rows > 1 && (grid || shape.setups.length > 1 || shape.settings.length > 1) ? 'ranked' : 'bars', name: `${measure}-${part}`, ...base, ...atFirst });
    if (shape.limited && main) ask(lists.also, { kind: 'share-of-limit', name: `${measure}-${part}-share`, ...base, ...(grid ? { setups: [shape.setups[0]!] } : {}) });
    if (roundup && seen.size === 0) perPrice(facts, base, atFirst).forEach((r) => ask(lists.also, r));
    seen.add(measure);
  }
  const [trace, ...traces] = tracesOf(facts);
  for (const request of [...(trace ? [trace] : []), ...perWatt(facts), ...forPower(pairs), ...traces]) ask(lists.also, request);
  for (const request of widest(facts, pairs)) ask(lists.kept, request);
  for (const c of about.curves.slice(0, 2)) ask(lists.kept, { kind: 'curve', name: `curve ${c.id}`, text: c.id });
  const room = most - lists.kept.length;
  const also = lists.also.slice(0, Math.max(4, room - lists.main.length));
  const main = lists.main.slice(0, room - also.length);
  const chosen = [...main, ...also, ...lists.spare.slice(0, Math.max(0, enough - main.length - also.length)), ...lists.kept];
  const names = new Set<string>();
  return chosen.flatMap((r) => splitRows(r, facts)).filter((r) => !names.has(r.name) && names.add(r.name));
}

/** The request itself, or as many parts as its rows need, as even as can be. */
export function splitRows(request: ChartRequest, facts: Facts): ChartRequest[] {
  const rows = request.slice ? 0 : charts.find((c) => c.kind === request.kind)?.rows(request, facts) ?? 0;
  if (rows <= mostRows) return [request];
  const parts = Math.ceil(rows / mostRows);
  const each = Math.ceil(rows / parts);
  return Array.from({ length: parts }, (_, i) => ({ ...request, name: `${request.name}-${i + 1}`, slice: { from: i * each, to: Math.min(rows, (i + 1) * each), part: i + 1, parts } }));
}

interface Pair {
  measure: string;
  part: string;
  shape: { setups: string[]; settings: string[]; workloads: string[]; rows: number; idle: boolean; limited: boolean };
}

/** Measure and part pairs with readings under load, in the order of the record, those with a better end first. */
function measuredPairs(facts: Facts): Pair[] {
  const { about } = facts;
  const groups = new Map<string, { key: Key; parts: KeyParts }[]>();
  for (const key of facts.keys()) {
    const parts = splitKey(key)!;
    if (!parts.phase || parts.phase === 'idle' || roomParts.includes(parts.part) || facts.readings(key).every((r) => r.constant)) continue;
    const id = `${parts.measure}/${parts.part}`;
    groups.set(id, [...(groups.get(id) ?? []), { key, parts }]);
  }
  const order = [...about.measures.keys()];
  const partOrder = [...about.parts.keys()];
  const pairs = [...groups.values()].map((keys): Pair => {
    const { measure, part } = keys[0]!.parts;
    const chosen = select({ kind: '', name: '', measure, part, place: about.place }, facts);
    const rows = chosen?.rows ?? [];
    const of = (field: 'setup' | 'setting' | 'workload'): string[] => [...new Set(rows.map((r) => r.parts[field]))];
    return {
      measure, part,
      shape: {
        setups: of('setup'), settings: of('setting'), workloads: of('workload'), rows: rows.length,
        idle: rows.length > 0 && rows.every((r) => facts.idleOf(r.key) !== undefined),
        limited: rows.length > 0 && rows.every((r) => sameUnit(facts, r.key, facts.constantFor(r.key, 'limit'))),
      },
    };
  }).filter((p) => p.shape.rows > 0);
  const rank = (p: Pair): number => (about.measures.get(p.measure)?.better === 'neither' ? 1000 : 0) + order.indexOf(p.measure);
  return pairs.sort((a, b) => rank(a) - rank(b) || partOrder.indexOf(a.part) - partOrder.indexOf(b.part));
}

function sameUnit(facts: Facts, a: Key, b: Key | undefined): boolean {
  if (!b) return false;
  const [x, y] = [facts.value(a), facts.value(b)];
  return isFact(x) && isFact(y) && x.unit.id === y.unit.id;
}

/** A log chart of each of the first two things logged, of the first measure that has logs, in the order of the record. */
function tracesOf(facts: Facts): Asked[] {
  const { setups, settings, workloads } = facts.about;
  const place = (t: { setup: string; setting: string; workload: string }): number[] => [[...setups.keys()].indexOf(t.setup), [...settings.keys()].indexOf(t.setting), [...workloads.keys()].indexOf(t.workload)];
  const first = [...facts.about.measures.keys()].map((m) => facts.traces.find((t) => t.measure === m)).find((t) => t !== undefined);
  if (!first) return [];
  const things = new Map(facts.traces.filter((t) => t.measure === first.measure && t.part === first.part).map((t) => [`${t.setup} ${t.setting} ${t.workload}`, t]));
  const ordered = [...things].sort(([, a], [, b]) => place(a).reduce((sum, x, i) => sum || x - place(b)[i]!, 0));
  return ordered.slice(0, 2).map(([id, t]) => ({ kind: 'trace', name: `${t.measure}-${t.part}-over-time ${id}`, measure: t.measure, part: t.part, setups: [t.setup], settings: [t.setting], workload: t.workload }));
}

type Asked = Omit<ChartRequest, 'place'>;

/** Frames per watt of the first setup (or of every setup at the first setting), where both were read. */
function perWatt(facts: Facts): Asked[] {
  const [rate, power] = ['frame_rate', 'power'].map((m) => facts.keys().map((k) => splitKey(k)!).find((p) => p.measure === m && p.phase !== '' && p.phase !== 'idle'));
  if (!rate || !power) return [];
  const chosen = select({ kind: '', name: '', measure: rate.measure, part: rate.part, phase: rate.phase, place: facts.about.place }, facts);
  const first = chosen?.rows[0];
  if (!first) return [];
  const vary = (['setting', 'setup'] as const).find((f) => chosen.by.includes(f));
  if (!vary) return [];
  const ids = chosen.rows
    .filter((r) => (['setup', 'setting', 'workload'] as const).every((f) => f === vary || r.parts[f] === first.parts[f]))
    .map((r) => facts.derive('per_watt', [r.key, withFields(r.key, { measure: power.measure, part: power.part })]))
    .filter(isFact).map((f) => f.id);
  return ids.length > 1 ? [{ kind: 'ranked', name: 'frames-per-watt', facts: ids }] : [];
}

/** Frame rate against power, where settings trade one for the other. */
function forPower(pairs: Pair[]): Asked[] {
  const rate = pairs.find((p) => p.measure === 'frame_rate');
  const power = pairs.find((p) => p.measure === 'power');
  if (!rate || !power || rate.shape.settings.length < 3) return [];
  const { measure, part, shape } = rate;
  return [{ kind: 'tradeoff', name: 'frames-against-power', measure, part, text: `power/${power.part}`, setups: [shape.setups[0]!], ...(shape.workloads.length > 1 && { workload: shape.workloads[0]! }) }];
}

/** The first measure for the money, where every setup has a price and more is better. */
function perPrice(facts: Facts, base: { measure: string; part: string }, only: { settings?: string[] }): Asked[] {
  if (facts.about.measures.get(base.measure)?.better !== 'higher') return [];
  const rows = select({ kind: '', name: '', ...base, ...only, place: facts.about.place }, facts)?.rows ?? [];
  const ids = rows.map((r) => facts.priceOf(r.parts.setup)).map((price, i) => price === undefined ? undefined : facts.derive('per_price', [rows[i]!.key, price])).filter(isFact).map((f) => f.id);
  return ids.length > 1 && ids.length === rows.length ? [{ kind: 'ranked', name: `${base.measure}-${base.part}-per-price`, facts: ids }] : [];
}

/** Temperatures over their rooms, which have a true zero, where every room is known. */
function overRoomOf(facts: Facts, base: { measure: string; part: string }, only: { settings?: string[] }): string[] {
  const rows = select({ kind: '', name: '', ...base, ...only, place: facts.about.place }, facts)?.rows ?? [];
  if (rows[0]?.fact.unit.dimension !== 'temperature') return [];
  const ids = rows.map((r) => facts.roomFor(r.key)).map((room, i) => room === undefined ? undefined : facts.derive('over_room', [rows[i]!.key, room])).filter(isFact).map((f) => f.id);
  return ids.length === rows.length ? ids : [];
}

/** Run by run where it matters most: where the best two overlap, else where the runs of one row lie furthest apart for their size. */
function widest(facts: Facts, pairs: Pair[]): Asked[] {
  const chosen = pairs.filter((p) => facts.about.measures.get(p.measure)?.better !== 'neither').flatMap(({ measure, part, shape }) => {
    const request = {
      kind: 'dots', name: `${measure}-${part}-run-by-run`, measure, part,
      ...(shape.setups.length > 1 && shape.settings.length > 1 && (shape.setups.length >= shape.settings.length ? { settings: [shape.settings[0]!] } : { setups: [shape.setups[0]!] })),
      ...(shape.workloads.length > 1 && (shape.setups.length > 1 || shape.settings.length > 1) && { workload: shape.workloads[0]! }),
    };
    const selection = select({ ...request, place: facts.about.place }, facts);
    const shown = selection?.rows.map((r) => r.fact) ?? [];
    if (!selection || shown.length < 2 || !shown.some(severalRuns)) return [];
    return [{ request, tied: selection.comparable && best(facts, measure, shown).tied === true, spread: Math.max(...shown.map(relativeSpread)) }];
  });
  const found = chosen.find((c) => c.tied) ?? [...chosen].sort((a, b) => b.spread - a.spread)[0];
  return found ? [found.request] : [];
}

function relativeSpread({ spread, value }: Fact): number {
  return spread && value.sign() !== 0 ? Math.abs(spread.max.minus(spread.min).over(value).toNumber()) : 0;
}

function severalRuns(fact: Fact): boolean {
  return fact.readings.length > 1;
}

function kebab(text: string): string {
  return text.normalize('NFKD').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '');
}
