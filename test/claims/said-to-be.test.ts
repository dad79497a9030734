// A place goes to what stands behind the verb; things called by a number are names; "Against the one on …" is what all is compared with.
import { factsOf, type Row } from './record-of.js';
import { rightAndWrong } from './right-and-wrong.js';

const rows: Row[] = [];
for (const [stove, t, n] of [['ember-140', 210, 36.2], ['ember-280', 212, 33.1], ['cinder-360', 215, 34.5]] as const) for (const [draught, k] of [['calm', 0], ['brisk', 10]] as const) rows.push([stove, draught, 'logs', 'temperature', 'flue', 'load', t + k, 'degC'], [stove, draught, 'logs', 'noise', 'fan', 'load', n + k / 2, 'dB(A)']);
const names = `kind,id,spoken
setup,ember-140,the Ember 140;the 140
setup,ember-280,the Ember 280;the 280
setup,cinder-360,the Cinder 360;the Cinder;the 360
setting,calm,calm
setting,brisk,brisk
workload,logs,logs
part,flue,flue
part,fan,fan
measure,temperature,temperature
measure,noise,noise
`;
const facts = factsOf(rows, names);

rightAndWrong(facts, [
  ['the thing behind the verb, not what was spoken of', 'Calm, the Cinder gives 34.5 decibels.\n\nThe N of the three is the 280, with 33.1 decibels, and the Cinder makes 1.4 more.', 'quietest', 'loudest'],
  ['two things called by their numbers', 'The 360 calm is N degrees hotter than the 280 calm.', '3', '5'],
  ['two that differ in both, one of them called by its number', 'The 360 calm is N degrees cooler than the 280 brisk.', '7', '9'],
  ['what opens the sentence, with its setting', 'The Cinder on calm comes next. Against the 280 on brisk it is N degrees cooler.', '7', '9'],
]);
