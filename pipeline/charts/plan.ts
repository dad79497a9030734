// Which charts suit an episode whose record asks for none, and why; and how a chart with too many rows is split.
import { type Fact, type Facts, isFact, isMeasured, type Key, type KeyParts, perPriceOf, quantityName, roomParts, splitKey, withFields, bestOf } from '../facts/index.js';
import { changed, limits, type Proposed } from '../story/index.js';
import { mostRows, type Stage } from '../theme/index.js';
import { changingLogs } from './changes.js';
import type { ChartRequest } from './chart.js';
import { charts } from './kinds.js';
import { prepareChart } from './prepare.js';
import { select } from './rows.js';

/** As many as an episode can show beside its graphics. */
const most = 10;
/** Measures with a picture of their own: those that changed most. */
const mostMeasures = 4;
/** Second parts of a measure, and measures without a better end, only fill up to this. */
const enough = 5;
/** More setups than this are a round-up. */
const few = 3;

type Asked = Omit<ChartRequest, 'place'>;
type Reasoned = Proposed<Asked>;

/** What suits the record: what stands side by side of the measures that changed most, in the order of the record; what limits; then the rest, the most telling first. */
export function planCharts(facts: Facts, stage: Stage): Proposed<ChartRequest>[] {
  const { about } = facts;
  const pairs = measuredPairs(facts);
  const mains = mainPairs(facts, pairs);
  const near = limits(facts);
  const leads: Reasoned[][] = [];
  const also: Reasoned[] = [];
  const last: Reasoned[] = [];
  const spare: Reasoned[] = [];
  for (const pair of pairs) {
    const name = quantityName(about, pair.measure, pair.part);
    const why = mains.get(pair);
    if (why === undefined) {
      spare.push(...because(`there is room for ${name} too`, [side(facts, pair, false), ...plainly(pair)]));
      continue;
    }
    spare.push(...because(`${name} as it was read, without the room taken off`, plainly(pair)));
    leads.push([...because(why, [side(facts, pair, pair.shape.idle && !leads.flat().some(isIdleLoad))]), ...because(`${name} was read at idle and under load`, afterwards(pair, leads))]);
    if (leads.length === 1 && isRoundup(pair)) also.push(...because('every setup has a price', perPrice(facts, baseOf(pair), atFirst(pair))));
    const limit = near.find((o) => o.fact.kind === 'percent_of' && o.measure === pair.measure && o.part === pair.part);
    if (pair.shape.limited && limit) last.push({ kind: 'share-of-limit', name: `${pair.measure}-${pair.part}-share`, ...baseOf(pair), ...(isGrid(pair) && { setups: [pair.shape.setups[0]!] }), why: limit.why });
    if (!pair.shape.idle && !isRoundup(pair)) last.push(...because(`${name} over the room has a true zero`, overRoom(facts, pair)));
  }
  const traces = changingLogs(facts, 1).map((t): Reasoned => ({
    kind: 'trace', name: `${t.measure}-${t.part}-over-time ${t.setup} ${t.setting} ${t.workload}`, measure: t.measure, part: t.part, setups: [t.setup], settings: [t.setting], workload: t.workload,
    why: `the log of ${quantityName(about, t.measure, t.part)} moves well beyond its noise`,
  }));
  const trades = because('settings trade frame rate for power', forPower(facts, pairs, stage));
  also.push(...traces, ...last.filter((r) => r.kind === 'share-of-limit'), ...trades, ...because('frame rate and power were both read', perWatt(facts)), ...widest(facts, pairs), ...last.filter((r) => r.kind !== 'share-of-limit'));
  const curves = about.curves.slice(0, 2).map((c): Reasoned => ({ kind: 'curve', name: `curve ${c.id}`, text: c.id, why: 'the record has this control curve' }));
  const room = most - curves.length;
  const main = leads.flat().slice(0, room - Math.min(also.length, 3));
  const rest = also.slice(0, room - main.length);
  const asked = [...main, ...rest, ...spare.slice(0, Math.max(0, enough - main.length - rest.length)), ...curves];
  const names = new Set<string>();
  return asked.map((r): Proposed<ChartRequest> => ({ ...r, name: kebab(r.name), place: about.place })).flatMap((r) => splitRows(r, facts)).filter((r) => !names.has(r.name) && names.add(r.name));
}

function because(why: string, asked: readonly Asked[]): Reasoned[] {
  return asked.map((a) => ({ ...a, why }));
}

/** The first part of each measure with a better end and something to compare, if it is among those that changed most; with the reason. */
function mainPairs(facts: Facts, pairs: readonly Pair[]): Map<Pair, string> {
  const seen = new Set<string>();
  const firsts = pairs.filter((p) => facts.about.measures.get(p.measure)?.better !== 'neither' && p.shape.rows > 1 && !seen.has(p.measure) && seen.add(p.measure));
  const told = changed(facts);
  const weighed = firsts.map((pair, i) => {
    const rank = told.findIndex((o) => o.measure === pair.measure);
    const own = told.find((o) => o.measure === pair.measure && o.part === pair.part) ?? told[rank];
    return { pair, i, rank: rank < 0 ? told.length : rank, why: own?.why ?? `${quantityName(facts.about, pair.measure, pair.part)} was read of ${pair.shape.rows} that can stand side by side` };
  });
  const chosen = [...weighed].sort((a, b) => a.rank - b.rank || a.i - b.i).slice(0, mostMeasures);
  return new Map(weighed.filter((w) => chosen.includes(w)).map((w) => [w.pair, w.why]));
}

const isIdleLoad = (r: Asked): boolean => r.kind === 'bars-idle-load';

/** Setups and settings both differ. */
function isGrid({ shape }: Pair): boolean {
  return shape.setups.length > 1 && shape.settings.length > 1;
}

function isRoundup(pair: Pair): boolean {
  return isGrid(pair) && pair.shape.setups.length > few;
}

function baseOf(pair: Pair): { measure: string; part: string; workload?: string } {
  const { measure, part, shape } = pair;
  return { measure, part, ...(isGrid(pair) && shape.workloads.length > 1 && { workload: shape.workloads[0]! }) };
}

function atFirst(pair: Pair): { settings?: string[] } {
  return isGrid(pair) ? { settings: [pair.shape.settings[0]!] } : {};
}

/** A measure as one picture that puts side by side what was compared. */
function side(facts: Facts, pair: Pair, idle: boolean): Asked {
  const { measure, part, shape } = pair;
  const base = baseOf(pair);
  if (isGrid(pair)) {
    if (isRoundup(pair) && !shape.idle) {
      const [over] = overRoom(facts, pair);
      if (over) return over;
    }
    return Math.min(shape.setups.length, shape.settings.length) <= few ? { kind: 'bars', name: `${measure}-${part}`, ...base } : { kind: 'ranked', name: `${measure}-${part}`, ...base, ...atFirst(pair) };
  }
  if (idle) return { kind: 'bars-idle-load', name: `${measure}-${part}-idle-load`, ...base };
  const [over] = shape.idle ? [] : overRoom(facts, pair);
  if (over) return over;
  const compared = shape.setups.length > 1 || shape.settings.length > 1;
  return { kind: compared && shape.rows > 1 ? 'ranked' : 'bars', name: `${measure}-${part}`, ...base };
}

/** The same without the room taken off. */
function plainly(pair: Pair): Asked[] {
  const { measure, part, shape } = pair;
  return shape.warm && !isGrid(pair) && shape.rows > 1 ? [{ kind: 'ranked', name: `${measure}-${part}`, ...baseOf(pair) }] : [];
}

/** What follows a first picture of many bars: idle and load of each setup, once in an episode; a round-up in order. */
function afterwards(pair: Pair, leads: readonly Asked[][]): Asked[] {
  if (!isGrid(pair)) return [];
  const { measure, part, shape } = pair;
  const base = baseOf(pair);
  const ranked: Asked[] = isRoundup(pair) && leads.length === 0 ? [{ kind: 'ranked', name: `${measure}-${part}-ranked ${shape.settings[0]!}`, ...base, ...atFirst(pair) }] : [];
  const idle = shape.idle && !leads.flat().some(isIdleLoad) ? shape.setups.slice(0, 2) : [];
  return [...ranked, ...idle.map((setup): Asked => ({ kind: 'bars-idle-load', name: `${measure}-${part}-idle-load ${setup}`, ...base, setups: [setup] }))];
}

/** The request itself, or as many parts as its rows need, as even as can be. */
export function splitRows<R extends ChartRequest>(request: R, facts: Facts): (R & ChartRequest)[] {
  const rows = request.slice ? 0 : rowsOf(request, facts);
  return rows <= mostRows ? [request] : inParts(request, rows, partsOf(rows));
}

/** How many rows a request would show; 0 of a kind that has none. */
export function rowsOf(request: ChartRequest, facts: Facts): number {
  return charts.find((c) => c.kind === request.kind)?.rows(request, facts) ?? 0;
}

/** As few parts as so many rows take on the largest stage. */
export function partsOf(rows: number): number {
  return Math.max(1, Math.ceil(rows / mostRows));
}

/** In parts as even as can be. Where another count is the usual one, their names tell how many they are. */
export function inParts<R extends ChartRequest>(request: R, rows: number, most: number, usual?: number): (R & ChartRequest)[] {
  if (most === 1) return [request];
  const each = Math.ceil(rows / most);
  const parts = Math.ceil(rows / each);
  return Array.from({ length: parts }, (_, i) => ({
    ...request, name: `${request.name}-${i + 1}${parts === (usual ?? parts) ? '' : `-of-${parts}`}`, slice: { from: i * each, to: Math.min(rows, (i + 1) * each), part: i + 1, parts },
  }));
}

/** A request that was split, whole again; undefined for all of its parts but the first. */
export function wholeOf<R extends ChartRequest>(request: R): R | undefined {
  if (!request.slice) return request;
  return request.slice.part === 1 ? { ...request, name: request.name.replace(/-1$/, ''), slice: undefined } : undefined;
}

interface Pair {
  measure: string;
  part: string;
  shape: { setups: string[]; settings: string[]; workloads: string[]; rows: number; idle: boolean; limited: boolean; warm: boolean };
}

/** Measure and part pairs with readings under load, in the order of the record, those with a better end first. */
function measuredPairs(facts: Facts): Pair[] {
  const { about } = facts;
  const groups = new Map<string, { key: Key; parts: KeyParts }[]>();
  for (const key of facts.keys()) {
    const parts = splitKey(key)!;
    if (!parts.phase || parts.phase === 'idle' || roomParts.includes(parts.part) || !isMeasured(facts, key)) continue;
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
        warm: rows[0]?.fact.unit.dimension === 'temperature',
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

/** Frames per watt of all that was compared in the first workload, where both were read. */
function perWatt(facts: Facts): Asked[] {
  const [rate, power] = ['frame_rate', 'power'].map((m) => facts.keys().filter((k) => isMeasured(facts, k)).map((k) => splitKey(k)!).find((p) => p.measure === m && p.phase !== '' && p.phase !== 'idle'));
  if (!rate || !power) return [];
  const chosen = select({ kind: '', name: '', measure: rate.measure, part: rate.part, phase: rate.phase, place: facts.about.place }, facts);
  const rows = chosen?.rows.filter((r) => r.parts.workload === chosen.rows[0]!.parts.workload) ?? [];
  const made = rows.map((r) => ({ ...r, per: facts.derive('per_watt', [r.key, withFields(r.key, { measure: power.measure, part: power.part })]) })).filter((r) => isFact(r.per));
  return sideBySide('frames-per-watt', made.map(({ parts, per }) => ({ parts, id: (per as Fact).id })));
}

/** Derived facts side by side: in groups where setups and settings both differ, else in order. */
function sideBySide(name: string, made: readonly { parts: KeyParts; id: string }[]): Asked[] {
  const count = (field: 'setup' | 'setting'): number => new Set(made.map((m) => m.parts[field])).size;
  const [setups, settings] = [count('setup'), count('setting')];
  if (setups < 2 && settings < 2) return [];
  const grid = setups > 1 && settings > 1;
  const facts = (list: typeof made): string[] => list.map((m) => m.id);
  if (!grid) return [{ kind: 'ranked', name, facts: facts(made) }];
  if (Math.min(setups, settings) <= few) return [{ kind: 'bars', name, facts: facts(made) }];
  return [{ kind: 'ranked', name, facts: facts(made.filter((m) => m.parts.setting === made[0]!.parts.setting)) }];
}

/** Frame rate against power, where settings trade one for the other: of every setup where there is room, else of the first. */
function forPower(facts: Facts, pairs: Pair[], stage: Stage): Asked[] {
  const rate = pairs.find((p) => p.measure === 'frame_rate');
  const power = pairs.find((p) => p.measure === 'power');
  if (!rate || !power || rate.shape.settings.length < 3) return [];
  const { measure, part, shape } = rate;
  const whole: Asked = { kind: 'tradeoff', name: 'frames-against-power', measure, part, text: `power/${power.part}`, ...(shape.workloads.length > 1 && { workload: shape.workloads[0]! }) };
  const fits = prepareChart({ ...whole, place: facts.about.place }, facts, stage).findings.length === 0;
  return [fits ? whole : { ...whole, setups: [shape.setups[0]!] }];
}

/** The first measure for the money, where every setup is a product with a price and more is better. */
function perPrice(facts: Facts, base: { measure: string; part: string }, only: { settings?: string[] }): Asked[] {
  if (facts.about.measures.get(base.measure)?.better !== 'higher') return [];
  const rows = select({ kind: '', name: '', ...base, ...only, place: facts.about.place }, facts)?.rows ?? [];
  const ids = rows.flatMap((r) => perPriceOf(facts, r.key)?.id ?? []);
  return ids.length > 1 && ids.length === rows.length ? [{ kind: 'ranked', name: `${base.measure}-${base.part}-per-price`, facts: ids }] : [];
}

/** Temperatures over their rooms, which have a true zero, where every room is known. */
function overRoom(facts: Facts, pair: Pair): Asked[] {
  const rows = select({ kind: '', name: '', ...baseOf(pair), place: facts.about.place }, facts)?.rows ?? [];
  if (rows[0]?.fact.unit.dimension !== 'temperature') return [];
  const made = rows.flatMap((r) => {
    const room = facts.roomFor(r.key);
    const over = room === undefined ? undefined : facts.derive('over_room', [r.key, room]);
    return isFact(over) ? [{ parts: r.parts, id: over.id }] : [];
  });
  return made.length === rows.length ? sideBySide(`${pair.measure}-${pair.part}-over-room`, made) : [];
}

/** Run by run where it matters most: where the best two overlap, else where the runs of one row lie furthest apart for their size. */
function widest(facts: Facts, pairs: Pair[]): Reasoned[] {
  const chosen = pairs.filter((p) => facts.about.measures.get(p.measure)?.better !== 'neither').flatMap(({ measure, part, shape }) => {
    const request = {
      kind: 'dots', name: `${measure}-${part}-run-by-run`, measure, part,
      ...(shape.setups.length > 1 && shape.settings.length > 1 && (shape.setups.length >= shape.settings.length ? { settings: [shape.settings[0]!] } : { setups: [shape.setups[0]!] })),
      ...(shape.workloads.length > 1 && (shape.setups.length > 1 || shape.settings.length > 1) && { workload: shape.workloads[0]! }),
    };
    const selection = select({ ...request, place: facts.about.place }, facts);
    const shown = selection?.rows.map((r) => r.fact) ?? [];
    if (!selection || shown.length < 2 || !shown.some(severalRuns)) return [];
    return [{ request, tied: selection.comparable && bestOf(facts, measure, shown).close !== undefined, spread: Math.max(...shown.map(relativeSpread)) }];
  });
  const found = chosen.find((c) => c.tied) ?? [...chosen].sort((a, b) => b.spread - a.spread)[0];
  return found ? [{ ...found.request, why: found.tied ? 'the best two cannot be told apart' : `the runs of ${quantityName(facts.about, found.request.measure, found.request.part)} lie furthest apart for their size` }] : [];
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
