// One request and more for every kind of graphic.
import { Facts, type PictureRequest } from '../../pipeline/facts/index.js';
import { card, cardFacts, place, pumpFacts } from '../charts/sample.js';

export interface Case {
  name: string;
  facts: () => Facts;
  request: Omit<PictureRequest, 'place' | 'name'>;
}

/** The card, its settings with their limits, its versions. */
export function described(): Facts {
  const episode = card();
  episode.settings.get('limit-75')!.parameters.push('/limit-75//power/board/limit');
  episode.phases.set('limit', { id: 'limit', name: 'Limit', spoken: ['limit'], place });
  return new Facts({
    ...episode, summary: 'The same graphics card on an open bench and in a closed case, at four settings.',
    versions: [{ name: 'driver', version: '81.4', place }, { name: 'firmware', version: '1.2', place }],
  });
}

const core = 'open-bench/stock/scene/temperature/core/load';
const rate = 'open-bench/limit-75/scene/frame_rate/average/load';

export const cases: Case[] = [
  { name: 'title', facts: described, request: { kind: 'chapter' } },
  { name: 'chapter-two', facts: described, request: { kind: 'chapter', title: 'What a closed case costs the card in every one of its four settings', text: 'Nine kelvin, and a little noise' } },
  { name: 'conditions', facts: described, request: { kind: 'conditions' } },
  { name: 'own-conditions', facts: described, request: { kind: 'conditions', text: 'Heater: 250 W; Loop: 360 mm radiator, three fans at 900 rpm' } },
  { name: 'rise', facts: cardFacts, request: { kind: 'figure', facts: [`rise:${core}~workload=,phase=idle`] } },
  { name: 'difference', facts: cardFacts, request: { kind: 'figure', facts: [`difference:${core}~setup=closed-case`] } },
  { name: 'change', facts: cardFacts, request: { kind: 'figure', facts: [`percent_change:${rate}~setting=stock`] } },
  { name: 'share', facts: cardFacts, request: { kind: 'figure', facts: ['percent_of:open-bench/limit-75/scene/power/board/load~/limit-75//power/board/limit'] } },
  { name: 'per-watt', facts: cardFacts, request: { kind: 'figure', facts: [`per_watt:${rate}~measure=power,part=board`] } },
  { name: 'plain', facts: pumpFacts, request: { kind: 'figure', facts: ['mean:umbry/full/heater/flow/loop/load'] } },
  { name: 'ranking', facts: pumpFacts, request: { kind: 'ranking', measure: 'flow', settings: ['full'] } },
  { name: 'ranking-lower', facts: cardFacts, request: { kind: 'ranking', measure: 'temperature', part: 'core', setups: ['closed-case'] } },
  { name: 'between-setups', facts: cardFacts, request: { kind: 'before-after', facts: [`difference:${core}~setup=closed-case`] } },
  { name: 'two-facts', facts: cardFacts, request: { kind: 'before-after', facts: ['mean:open-bench/stock/scene/frame_rate/average/load', `mean:${rate}`] } },
  { name: 'long-unit', facts: pumpFacts, request: { kind: 'before-after', facts: ['difference:orlo/matched/heater/flow/loop/load~setting=full'] } },
  { name: 'now', facts: described, request: { kind: 'now', setups: ['closed-case'], settings: ['limit-75'] } },
  { name: 'now-short', facts: described, request: { kind: 'now', setups: ['open-bench'] } },
];

export function requestOf({ name, request }: Case): PictureRequest {
  return { ...request, name, place };
}
