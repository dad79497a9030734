// A difference that the record itself calls too small.
import { judge } from '../facts/index.js';
import { show } from '../quantities/index.js';
import { splitKey } from '../records/index.js';
import { type Check, yaml } from './check.js';
import { weighStated } from './stated.js';
import { derivation, nameOf, readingPlaces } from './words.js';

export const tooSmallToMatter: Check = {
  name: 'too-small-to-matter',
  says: 'A stated difference or change is smaller than the smallest one that matters, as the record has it.',
  why: 'Whoever says under `measures:` that 1 K is the least that matters should not tell half a kelvin as a result.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    setups: {a: {name: Ash}, b: {name: Birch}}
    workloads: {scene: {name: Test scene}}
    measures: {temperature: {better: lower, matters: 1 K}}
    readings:
      - {for: {setup: a, workload: scene}, temperature/core: {load: 61.0 61.1 61.0 °C}}
      - {for: {setup: b, workload: scene}, temperature/core: {load: 63.4 63.5 63.4 °C}}
    stated:
      - {difference: [b//scene/temperature/core/load, a//scene/temperature/core/load], is: 2.4 K}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {a: {name: Ash}, b: {name: Birch}}
    workloads: {scene: {name: Test scene}}
    measures: {temperature: {better: lower, matters: 1 K}}
    readings:
      - {for: {setup: a, workload: scene}, temperature/core: {load: 61.0 61.1 61.0 °C}}
      - {for: {setup: b, workload: scene}, temperature/core: {load: 61.6 61.7 61.6 °C}}
    stated:
      - {difference: [b//scene/temperature/core/load, a//scene/temperature/core/load], is: 0.6 K} # expect
  `) },
  run(context) {
    const { episode, facts } = context;
    return weighStated(context).flatMap(({ stated, fact }) => {
      if (!fact || !['difference', 'percent_change', 'ratio'].includes(fact.kind) || stated.quantity.value.sign() === 0) return [];
      const measure = episode.measures.get(splitKey(fact.subject)?.measure ?? '');
      const judged = judge(facts, fact);
      if (!measure?.matters || !judged?.small) return [];
      const { difference } = judged;
      const matters = show(measure.matters.value, measure.matters.unit, measure.matters.decimals);
      return [{
        place: stated.place, subject: fact.id, said: fact.shown, recorded: matters, derivation: derivation(difference),
        message: `${stated.where ? `${stated.where}: ` : ''}tells a difference of ${difference.shown}; for ${nameOf(facts.about, 'measure', measure.id).toLowerCase()} the least that matters is ${matters}`,
        suggest: 'no difference that matters', related: readingPlaces(fact.readings),
      }];
    });
  },
};
