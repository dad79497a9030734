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
  episode.settings.get('undervolt')!.kind = 'undervolt';
  episode.settings.get('overclock')!.kind = 'overclock';
  episode.setups.set('varrow', { id: 'varrow', name: 'Varrow 12', spoken: ['the Varrow'], kind: 'product', obtained: 'lent', sample: '2', place });
  return new Facts({
    ...episode, summary: 'The same graphics card on an open bench and in a closed case, at four settings.',
    disclosures: [{ text: 'The card was lent by its maker and goes back; nobody saw this episode before it was published.', place }],
    instruments: [{ name: 'Wall meter', measures: ['power/board'], accuracy: '±1 %', place }, { name: 'Board sensors', measures: ['temperature'], place }],
    system: [
      { name: 'Card', detail: 'Varrow 12', obtained: 'lent', place }, { name: 'Case', detail: 'Dunfell 40, three fans at the front', obtained: 'bought', place },
      { name: 'Power supply', detail: '850 W', obtained: 'own', place }, { name: 'Processor', detail: 'Ardane 12', obtained: 'own', place },
      { name: 'Memory', detail: '32 GB in two sticks', place }, { name: 'Meter', place },
    ],
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
  { name: 'with-its-change', facts: cardFacts, request: { kind: 'figure', facts: [`mean:${core}`, `difference:${core}~setup=closed-case`] } },
  { name: 'with-its-rise', facts: cardFacts, request: { kind: 'figure', facts: [`mean:${core}`, `rise:${core}~workload=,phase=idle`] } },
  { name: 'pair-rises', facts: cardFacts, request: { kind: 'pair', facts: [`rise:${core}~workload=,phase=idle`, `rise:${core.replace('open-bench', 'closed-case')}~workload=,phase=idle`] } },
  { name: 'pair-losses', facts: cardFacts, request: { kind: 'pair', facts: ['limit-75', 'undervolt', 'overclock'].map((s) => `percent_change:${rate.replace('limit-75', s)}~setting=stock`) } },
  { name: 'span-one', facts: cardFacts, request: { kind: 'span', facts: [`rise:${core}~workload=,phase=idle`] } },
  { name: 'span-four', facts: cardFacts, request: { kind: 'span', facts: ['stock', 'limit-75', 'undervolt', 'overclock'].map((s) => `rise:${core.replace('stock', s)}~workload=,phase=idle`) } },
  { name: 'span-down', facts: cardFacts, request: { kind: 'span', facts: [`difference:${rate}~setting=stock`] } },
  { name: 'gauge-one', facts: cardFacts, request: { kind: 'gauge', facts: ['percent_of:open-bench/limit-75/scene/power/board/load~/limit-75//power/board/limit'] } },
  { name: 'gauge-over', facts: cardFacts, request: { kind: 'gauge', facts: ['stock', 'overclock'].map((s) => `percent_of:open-bench/${s}/scene/power/board/load~/limit-75//power/board/limit`) } },
  { name: 'settings', facts: described, request: { kind: 'settings' } },
  { name: 'settings-two', facts: described, request: { kind: 'settings', settings: ['stock', 'limit-75'] } },
  { name: 'parts', facts: described, request: { kind: 'parts' } },
  { name: 'method', facts: described, request: { kind: 'method' } },
  { name: 'own-method', facts: described, request: { kind: 'method', text: 'Runs: three of each; Window: the last two minutes of load' } },
  { name: 'name-product', facts: described, request: { kind: 'name', setups: ['varrow'] } },
  { name: 'name-own', facts: described, request: { kind: 'name', title: 'Wenna Tarrow', text: 'tests alone, since some years' } },
  { name: 'summary', facts: cardFacts, request: { kind: 'summary', facts: [`difference:open-bench/undervolt/scene/temperature/core/load~setting=stock`, `percent_change:open-bench/undervolt/scene/power/board/load~setting=stock`, `percent_change:${rate.replace('limit-75', 'undervolt')}~setting=stock`] } },
  { name: 'summary-one-side', facts: cardFacts, request: { kind: 'summary', title: 'What the closed case changes', facts: [`difference:closed-case/stock/scene/temperature/core/load~setup=open-bench`, `difference:closed-case/stock/scene/frame_rate/average/load~setup=open-bench`] } },
  { name: 'correction', facts: cardFacts, request: { kind: 'correction', facts: [`rise:${core}~workload=,phase=idle`], text: '25 degrees' } },
  { name: 'thumbnail', facts: cardFacts, request: { kind: 'thumbnail', facts: [`difference:${core}~setup=closed-case`], title: 'Cooler than the case' } },
  { name: 'thumbnail-share', facts: cardFacts, request: { kind: 'thumbnail', facts: [`percent_change:${rate}~setting=stock`] } },
  { name: 'end', facts: described, request: { kind: 'end' } },
];

export function requestOf({ name, request }: Case): PictureRequest {
  return { ...request, name, place };
}
