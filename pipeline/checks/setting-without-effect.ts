// A setting that does not do what its kind says.
import { convert } from '../quantities/index.js';
import { type Check, yaml } from './check.js';
import { isLoad, measured } from './measured.js';
import { nameOf, readingPlaces, tell } from './words.js';

/** What a kind of setting must lower or raise against stock. */
const effects: Partial<Record<string, { dimension: string; part: RegExp; down: boolean }>> = {
  undervolt: { dimension: 'voltage', part: /core|processor|package|die/, down: true },
  'power-limit': { dimension: 'power', part: /./, down: true },
  overclock: { dimension: 'frequency', part: /core|processor|memory/, down: false },
};

export const settingWithoutEffect: Check = {
  name: 'setting-without-effect',
  says: 'An undervolt has no lower voltage than stock, a power limit no lower power, an overclock no higher clock.',
  why: 'The setting was not applied, was reset on the way, or the columns of two settings were swapped.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    settings: {stock: {name: Stock, kind: stock}, uv: {name: Undervolt, kind: undervolt}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, setting: stock, workload: scene}, voltage/core: {load: 1.031 1.031 1.031 V}}
      - {for: {setup: bench, setting: uv, workload: scene}, voltage/core: {load: 0.900 0.900 0.900 V}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    settings: {stock: {name: Stock, kind: stock}, uv: {name: Undervolt, kind: undervolt}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, setting: stock, workload: scene}, voltage/core: {load: 1.031 1.031 1.031 V}}
      - {for: {setup: bench, setting: uv, workload: scene}, voltage/core: {load: 1.037 1.037 1.031 V}} # expect
  `) },
  run({ episode, facts }) {
    const stocks = new Set([...episode.settings.values()].filter((s) => s.kind === 'stock').map((s) => s.id));
    const all = measured(facts);
    return all.flatMap(({ key, at, readings, mean }) => {
      const effect = effects[episode.settings.get(at.setting)?.kind ?? ''];
      if (!effect || !isLoad(at) || mean?.unit.dimension !== effect.dimension || !effect.part.test(at.part)) return [];
      const beside = facts.sameBut(key, 'setting');
      const stock = all.find((m) => stocks.has(m.at.setting) && beside.includes(m.key));
      const base = stock?.mean && convert(stock.mean.value, stock.mean.unit, mean.unit);
      if (!base || (effect.down ? mean.value.compare(base) < 0 : mean.value.compare(base) > 0)) return [];
      return [{
        place: readings[0]!.place, subject: key, said: mean.shown, recorded: stock!.mean!.shown,
        message: `${tell(facts.about, key)} says ${mean.shown}, not ${effect.down ? 'below' : 'above'} the ${stock!.mean!.shown} of ${nameOf(facts.about, 'setting', stock!.at.setting)}`,
        related: readingPlaces(stock!.readings, (r) => `${nameOf(facts.about, 'setting', stock!.at.setting)}, run ${r.run}`),
      }];
    });
  },
};
