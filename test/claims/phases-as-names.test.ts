// A word that is the name of some work and of a phase of other readings: where nothing measured in the unit said has that phase, the work is meant.
import { expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const of = (setup: string, minutes: number, watts: number): Row[] => [
  [setup, '', 'glaze', 'duration', 'job', 'load', minutes, 'min', 0.1], [setup, '', 'glaze', 'power', 'wall', 'firing', watts, 'W', 0.1], [setup, '', '', 'power', 'wall', 'idle', watts / 5, 'W', 0.1],
];
const kilns = factsOf([...of('tansy', 14.2, 61), ...of('yarrow', 17.6, 48)], `kind,id,spoken
setup,tansy,the Tansy
setup,yarrow,the Yarrow
workload,glaze,firing;the glaze
part,job,job
part,wall,at the wall
measure,duration,takes;minutes
measure,power,draws;watts
`);

test.each([
  ['For a firing, take the Tansy: 14.2 minutes.', ['agrees']],
  ['For a firing, take the Tansy: 14.9 minutes.', ['disagrees']],
])('%s', (script, verdicts) => expect(proof(new Source('script.md', script), kilns).mentions.map((m) => m.verdict)).toEqual(verdicts));
