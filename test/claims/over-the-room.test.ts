// What lies over the room, told in other ways than "31 over the room".
import { rightAndWrong } from './right-and-wrong.js';
import { stove } from './stove-record.js';

const shed = '## In the shed\n\nAs it comes, baking, the lid is at 112 and the base at 131 degrees. ';
rightAndWrong(stove, [
  ['two ends each', `${shed}Over the room, the lid went from 93 as it comes down to 82 on gentle, and the base from 112 to N.`, '98', '89'],
  ['without the room', `${shed}If you leave out the room, the lid is N and the base 112.`, '93', '97'],
  ['the room taken off', `${shed}With the room taken off, that's 93 for the lid and N for the base.`, '112', '121'],
  ['in the order told', `${shed}Over the room that's 93 and N.`, '112', '110'],
]);
