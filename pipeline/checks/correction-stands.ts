// A correction of what was right.
import { correctionsOf } from '../facts/index.js';
import { gives } from '../slips/index.js';
import { type Check, yaml } from './check.js';
import { saidValue } from './corrected.js';
import { derivation, readingPlaces, tell } from './words.js';

/** Of these the sign tells the direction, which words beside the number may tell as well. */
const signed: ReadonlySet<string> = new Set(['difference', 'points', 'percent_change']);

export const correctionStands: Check = {
  name: 'correction-stands',
  says: 'A correction calls wrong what the readings give, within the rounding of what was said.',
  why: 'What was said in public and was right should not be taken back: often a reading was changed since, or the correction names another fact than it means.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        temperature/core: {idle: 28.1 28.0 28.2 °C, load: 48.6 48.7 48.8 °C}
    corrections:
      - {said: 25 K, fact: "rise:bench//scene/temperature/core/load~workload=,phase=idle", where: 3:12, reason: read off the wrong line}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        temperature/core: {idle: 28.1 28.0 28.2 °C, load: 48.6 48.7 48.8 °C}
    corrections:
      - {said: 21 K, fact: "rise:bench//scene/temperature/core/load~workload=,phase=idle", where: 3:12} # expect
      - {said: about 49 degrees, fact: bench//scene/temperature/core/load, where: thumbnail} # expect
  `) },
  run({ facts }) {
    return correctionsOf(facts).flatMap(({ correction: c, fact }) => {
      const said = saidValue(c.said, fact);
      if (!said || !gives(said.quantity, fact) || (!said.whole && signed.has(fact.kind))) return [];
      return [{
        place: c.saidPlace, subject: fact.id, said: c.said, recorded: fact.shown, derivation: derivation(fact),
        message: `${c.where}: "${c.said}" is what the readings give (${fact.formula} = ${fact.shown}); there is nothing to correct`,
        related: readingPlaces(fact.readings, (r) => tell(facts.about, r.key)),
      }];
    });
  },
};
