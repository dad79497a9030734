// A correction without a fact behind it.
import { isFact, rightOf, suggestIds } from '../facts/index.js';
import { type Check, yaml } from './check.js';

export const correctionUnknown: Check = {
  name: 'correction-unknown',
  says: 'A correction names a fact that the readings do not give.',
  why: 'What is right comes from the readings; a correction that rests on none would be the second mistake.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        power/board: {load: 247 248 248 W}
    corrections:
      - {said: 258 W, fact: bench//scene/power/board/load, where: description}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        power/board: {load: 247 248 248 W}
    corrections:
      - {said: 258 W, fact: bench//scene/power/bord/load, where: description} # expect
      - {said: 30 K, fact: "rise:bench//scene/power/board/load~workload=,phase=idle", where: thumbnail} # expect
      - {said: 30 K, fact: warmer than before, where: thumbnail} # expect
  `) },
  run({ facts }) {
    return facts.about.corrections.flatMap((c) => {
      const fact = rightOf(facts, c);
      if (isFact(fact)) return [];
      const [near] = suggestIds(facts, c.fact, 1);
      return [{
        place: c.factPlace, subject: c.fact, said: c.fact,
        message: `${c.where}: ${fact ? `the readings do not give ${c.fact}: ${fact.why}` : `"${c.fact}" is neither a fact id nor a key`}${near ? `; did you mean ${near}?` : ''}`,
        ...(near && { suggest: near }),
      }];
    });
  },
};
