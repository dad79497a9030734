// A mark that the record has for one setting holds in the others; what a figure is likened to is nothing that it is of.
import { rightAndWrong } from './right-and-wrong.js';
import { stove } from './stove-record.js';

rightAndWrong(stove, [
  ['a limit noted with another setting', '## In the hut, fierce\n\nBaking on fierce, the stove pulls 459 watts, which is N over its limit.', '29', '39'],
  ['a share of it', '## In the hut, gentle\n\nBaking on gentle, the stove pulls 315 watts, so N percent of the limit.', '73', '77'],
  ['how far it stays below', '## In the hut, fierce\n\nBaking on fierce, the base is at 168 degrees, only N under its limit of 180.', '12', '14'],
  ['unlike what it was elsewhere', '## In the hut\n\nBaking on gentle, the noise is not quite what we had in the shed: N decibels.', '34.9', '43.9'],
  ['likened, then told', '## In the hut\n\nAs it comes, baking, the power is about what we had in the shed: N watts.', '409', '419'],
  ['by how much it differs', '## In the hut\n\nAs it comes, baking, the power is close to what it was in the shed, at 409 watts, N less.', '3', '8'],
]);
