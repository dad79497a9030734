// One request and more for every kind of chart.
import type { ChartRequest } from '../../pipeline/charts/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { cardFacts, place, pumpFacts, pumps, withCurve } from './sample.js';

export interface Case {
  name: string;
  facts: () => Facts;
  request: Omit<ChartRequest, 'place' | 'name'>;
}

/** The pumps under names that need two lines, or all the room of one. */
function longNames(few: boolean): Facts {
  const episode = pumps();
  for (const [id, name] of [['orlo', 'Larkfield 70 with the long cooler'], ['pennick', 'Copse 24 with its front closed'], ['tessick', 'Fennel 850, the second sample']] as const) {
    episode.setups.get(id)!.name = name;
  }
  if (few) episode.readings = episode.readings.filter((r) => /^(orlo|pennick|tessick)/.test(r.key));
  return new Facts(episode);
}

const settings = ['stock', 'limit-75', 'undervolt', 'overclock'];

export const cases: Case[] = [
  { name: 'idle-load', facts: cardFacts, request: { kind: 'bars-idle-load', measure: 'temperature', setups: ['closed-case'] } },
  { name: 'grouped', facts: cardFacts, request: { kind: 'bars', measure: 'frame_rate' } },
  { name: 'twelve-bars', facts: pumpFacts, request: { kind: 'bars', measure: 'flow' } },
  { name: 'one-layer', facts: cardFacts, request: { kind: 'bars', measure: 'power', setups: ['open-bench'] } },
  { name: 'ranked-lower', facts: cardFacts, request: { kind: 'ranked', measure: 'temperature', setups: ['open-bench'] } },
  { name: 'ranked-higher', facts: pumpFacts, request: { kind: 'ranked', measure: 'flow', settings: ['full'] } },
  { name: 'per-watt', facts: cardFacts, request: { kind: 'ranked', facts: settings.map((s) => `per_watt:open-bench/${s}/scene/frame_rate/average/load~measure=power,part=board`) } },
  { name: 'dots', facts: cardFacts, request: { kind: 'dots', measure: 'temperature', setups: ['open-bench'] } },
  { name: 'six-dots', facts: pumpFacts, request: { kind: 'dots', measure: 'flow', settings: ['full'] } },
  { name: 'six-long-names', facts: () => longNames(false), request: { kind: 'ranked', measure: 'flow', settings: ['full'] } },
  { name: 'three-long-names', facts: () => longNames(true), request: { kind: 'ranked', measure: 'flow', settings: ['full'] } },
  { name: 'dots-long-names', facts: () => longNames(false), request: { kind: 'dots', measure: 'flow', settings: ['full'] } },
  { name: 'grouped-long-names', facts: () => longNames(false), request: { kind: 'bars', measure: 'flow' } },
  { name: 'share', facts: cardFacts, request: { kind: 'share-of-limit', measure: 'power', setups: ['closed-case'] } },
  { name: 'trace', facts: cardFacts, request: { kind: 'trace', measure: 'temperature' } },
  { name: 'tradeoff', facts: cardFacts, request: { kind: 'tradeoff', measure: 'frame_rate', setups: ['open-bench'] } },
  { name: 'tradeoff-two', facts: cardFacts, request: { kind: 'tradeoff', measure: 'frame_rate', text: 'temperature/core' } },
  { name: 'differences', facts: cardFacts, request: { kind: 'differences', measure: 'frame_rate', setups: ['open-bench'] } },
  { name: 'differences-two-setups', facts: cardFacts, request: { kind: 'differences', measure: 'temperature' } },
  { name: 'differences-percent', facts: pumpFacts, request: { kind: 'differences', measure: 'flow', settings: ['full'], text: 'percent' } },
  { name: 'slope', facts: cardFacts, request: { kind: 'slope', measure: 'temperature' } },
  { name: 'slope-one', facts: cardFacts, request: { kind: 'slope', measure: 'frame_rate', settings: ['stock'] } },
  { name: 'grid', facts: cardFacts, request: { kind: 'grid', measure: 'temperature' } },
  { name: 'grid-six', facts: pumpFacts, request: { kind: 'grid', measure: 'flow' } },
  { name: 'distribution', facts: cardFacts, request: { kind: 'distribution', measure: 'temperature', facts: ['mean:open-bench/stock/scene/temperature/core/load', 'mean:open-bench/stock//temperature/core/idle'] } },
  { name: 'curve', facts: withCurve, request: { kind: 'curve', text: 'fans' } },
];

export function requestOf({ name, request }: Case): ChartRequest {
  return { ...request, name, place };
}
