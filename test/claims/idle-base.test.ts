// What stands behind "from idle to load" says what it is that rose, and belongs to neither end.
import { facts } from './bench-record.js';
import { rightAndWrong } from './right-and-wrong.js';

// The coolant, slow, from 25 at idle: to 41 on the wall stand, to 45 on the floor stand.
const before = 'On the floor stand flat out, the pump hums at 36 decibels.\n\n';

rightAndWrong(facts, [
  ['named behind both ends', `${before}The coolant rose N degrees from idle to load on the wall stand at the slow setting.`, '16', '20'],
  ['… with a joint between', `${before}The coolant rose N degrees, from idle to load, with the wall stand at the slow setting.`, '16', '20'],
  ['said first', `${before}From idle to load the coolant climbs by N degrees on the wall stand at the slow setting.`, '16', '20'],
  ['said first, with a comma', `${before}From idle to load, the coolant climbs by N degrees on the wall stand at the slow setting.`, '16', '20'],
  ['idle alone', `${before}The coolant rose N degrees from idle with the wall stand at the slow setting.`, '16', '20'],
  ['between the two', `${before}On the wall stand at the slow setting, the coolant climbs by N degrees between idle and load.`, '16', '20'],
  ['named before', `${before}On the wall stand at the slow setting, the coolant rose N degrees from idle to load.`, '16', '20'],
  ['where the section names what was named last', '## The floor stand\n\nThe coolant rose N degrees from idle to load on the wall stand at the slow setting.', '16', '20'],
]);
