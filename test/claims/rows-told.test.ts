// Figures side by side that name nothing: they go, in turn, with the things that had figures side by side before.
import { rightAndWrong } from './right-and-wrong.js';
import { stove } from './stove-record.js';

const shed = '## In the shed\n\nAs it comes, baking, the lid is at 112 and the base at 131 degrees. ';
rightAndWrong(stove, [
  ['of another setting', `${shed}Put it on gentle and you get 101 and N.`, '117', '119'],
  ['in the order told', `${shed}\n\n## In the hut\n\nStill as it comes. This time it's N and 147.`, '124', '134'],
  ['past other figures', `${shed}It draws 412 watts for that and hums at 36.4 decibels. On fierce those two are at N and 146.`, '121', '128'],
  ['how much each changed', `${shed}The fierce setting has them at 121 and 146, so 9 and N more.`, '15', '17'],
  ['how much each changed, with the names in the sentence', `${shed}On gentle the lid is at 101 and the base at 117, so it takes eleven and N degrees off.`, '14', '17'],
  ['what opens the sentence is what both are compared with', `${shed}On gentle the lid is at 101 and the base at 117. So compared with fierce that's 20 and N degrees better.`, '29', '25'],
  ['in the order of two sentences', '## In the shed\n\nAs it comes, baking, the base sits at 131 degrees. The grate is at 148, and the lid at 112. On gentle those are 117, N and 101 respectively.', '139', '149'],
  ['another quantity of the same two', '## Fierce\n\nBaking on fierce, the noise is 41.1 decibels in the shed and 45.8 in the hut. The blower is at 1,230 and N rpm.', '1,510', '1,150'],
]);
