// Pages to look at in the tests: one with everything in it, one with hostile names, one with nothing.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Facts } from '../../pipeline/facts/index.js';
import { type EpisodePage, renderPage } from '../../pipeline/page/index.js';
import { readQuantity, unit } from '../../pipeline/quantities/index.js';
import type { Episode } from '../../pipeline/records/index.js';
import { factsOf } from '../facts/episode.js';
import { arrangement, mapOf, measure, named, place, product, setting } from '../narration/episodes.js';

export const template = (name: string): string => readFileSync(resolve(import.meta.dirname, '../../templates', name), 'utf8');

export const quantity = (text: string) => {
  const q = readQuantity(text);
  if ('why' in q) throw new Error(q.why);
  return q.quantity;
};

const readings = `
bench/stock//temperature/core/idle: 38 38 39 °C
bench/stock/scene/temperature/core/load: 67 67 68 °C
bench/stock/scene/temperature/hotspot/load: 81 81 82 °C
box/stock//temperature/core/idle: 44 44 45 °C
box/stock/scene/temperature/core/load: 78 78 79 °C
box/stock/scene/temperature/hotspot/load: 94 94 95 °C
bench/stock/scene/power/board/load: 247.6 248.3 248.1 W
box/stock/scene/power/board/load: 246.9 247.4 247.0 W
bench/stock/scene/temperature/room/load: 22.1 22.2 22.1 °C
box/stock/scene/temperature/room/load: 22.8 22.9 22.9 °C
/stock//power/board/limit: = 250 W`;

export const full: Partial<Episode> = {
  id: 'example', title: 'One board, two boxes', date: '2026-03-14', summary: 'The same board on a bench and in a box.',
  disclosures: [{ text: 'The box was lent by its maker.', place }], method: [{ text: 'Three runs of the scene.', place }],
  versions: [{ name: 'driver', version: '81.4', place }],
  instruments: [{ name: 'wall meter', measures: ['power/board'], resolution: quantity('0.1 W'), accuracy: '±1 %', place }],
  setups: mapOf({ ...arrangement('bench', 'the bench'), name: 'Bench' }, { ...product('box', 'the box'), name: 'Box', obtained: 'lent' as const, price: { amount: quantity('119 EUR'), date: '2026-03-02', place } }),
  settings: mapOf({ ...setting('stock', 'stock', 'stock'), name: 'Stock' }),
  workloads: mapOf({ ...named('scene', 'the scene'), name: 'Scene' }),
  measures: mapOf({ ...measure('temperature', 'lower'), name: 'Temperature' }, { ...measure('power', 'lower'), name: 'Power' }),
  parts: mapOf({ ...named('core', 'the core'), name: 'Core' }, { ...named('hotspot', 'the hotspot'), name: 'Hotspot' }, { ...named('board', 'the board'), name: 'Board' }, { ...named('room', 'the room'), name: 'Room' }),
  phases: mapOf({ ...named('idle', 'at idle'), name: 'Idle' }, { ...named('load', 'under load'), name: 'Load' }),
  system: [{ name: 'Case', detail: 'front panel closed', obtained: 'lent', place }],
  curves: [{ id: 'fans', name: 'Fans against core', of: { label: 'Fan', unit: unit('rpm') }, against: { label: 'Core', unit: unit('degC') }, points: [{ at: quantity('40 °C'), value: quantity('600 rpm') }], place }],
  secondUnits: new Map([['degC', 'degF']]),
};

export const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="1920" height="1080" viewBox="0 0 1920 1080"><g id="a"><rect x="40" y="40" width="1840" height="1000" fill="#0f151d"/><text x="104" y="150" font-family="Inter" font-size="64" font-weight="700" fill="#f4f7fa">Core, idle &amp; load</text></g></svg>';

export function factsWithAside(change: Partial<Episode> = {}): Facts {
  const facts = factsOf(readings.trim(), { ...full, ...change });
  facts.readings('bench/stock/scene/power/board/load', { aside: true })[2]!.aside = { reason: 'the window was open', place };
  return facts;
}

export function pageOf(facts: Facts, change: Partial<EpisodePage> = {}): string {
  return renderPage({
    facts, template, draft: false,
    pictures: [
      { name: 'core', kind: 'bars', title: 'Core, idle and load', alt: 'Two bars: 67 on the bench, 78 in the box.', facts: ['mean:bench/stock/scene/temperature/core/load'], table: { head: ['', 'Load'], rows: [['Bench', '67'], ['Box', '78']] }, svg, files: ['pictures/01-core-1920x1080.png', 'pictures/01-core.svg'], data: 'pictures/01-core.json' },
      { name: 'call-out', kind: 'figure', title: 'Rise', alt: 'A figure: 29 K.', facts: [], svg, files: ['pictures/02-call-out-1920x1080.png'] },
    ],
    sentences: [{ section: 'On the bench', text: 'The core rose 29 degrees.', facts: ['rise:bench/stock/scene/temperature/core/load~workload=,phase=idle'] }],
    cautions: [{ text: 'Mains voltage can kill. Ask a qualified person.', because: 'the instrument “wall meter”' }],
    findings: [
      { code: 'room-differs', severity: 'warning', message: 'The room differs by 0.8 K.', subject: 'box', accepted: { reason: 'the differences are larger', place } },
      { code: 'runs-disagree', severity: 'note', message: 'The runs differ by 0.4 %.' },
    ],
    ...change,
  });
}

export const hostile = '"><script>alert(1)</script><img src=x onerror=alert(2)>{{constructor}}</title></style>';

/** Every name and text of a record that a page shows, hostile. */
export function hostileFacts(): Facts {
  const nasty = <T extends { name: string }>(map: Map<string, T> | undefined) => new Map([...(map ?? [])].map(([id, n]) => [id, { ...n, name: `${n.name} ${hostile}` }]));
  return factsWithAside({
    title: hostile, summary: hostile, disclosures: [{ text: hostile, place }], method: [{ text: hostile, place }],
    versions: [{ name: hostile, version: hostile, place }], instruments: [{ name: hostile, measures: ['power/board'], accuracy: hostile, place }],
    setups: nasty(full.setups), settings: nasty(full.settings), workloads: nasty(full.workloads), measures: nasty(full.measures), parts: nasty(full.parts), phases: nasty(full.phases),
    system: [{ name: hostile, detail: hostile, place }], curves: [{ ...full.curves![0]!, name: hostile, of: { label: hostile, unit: unit('rpm') } }],
    quotes: [{ episode: hostile, fact: hostile, as: 'bench/stock/scene/temperature/core/load', place }],
  });
}

export function hostilePage(): string {
  return pageOf(hostileFacts(), {
    pictures: [{ name: 'x', kind: 'bars', title: hostile, alt: hostile, facts: [], table: { head: [hostile], rows: [[hostile]] }, svg, files: ['pictures/x.svg'] }],
    sentences: [{ section: hostile, text: hostile, facts: [] }], cautions: [{ text: hostile, because: hostile }],
    findings: [{ code: 'x', severity: 'warning', message: hostile, accepted: { reason: hostile, place } }],
  });
}

export const emptyPage = (): string => pageOf(factsOf('a/b/c/power/board/load: 1 W', { id: 'empty', title: '' }), { pictures: [], sentences: [], cautions: [], findings: [] });
