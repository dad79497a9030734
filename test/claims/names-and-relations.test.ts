// Names of a record that are more or less than they look: a part that is called by a relation, a part that is called with its quantity.
import { rightAndWrong, type Told } from './right-and-wrong.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [];
const vats: [string, number, number, number, number][] = [['tarvin', 12.4, 58.3, 21.2, 41], ['pellow', 9.1, 49.6, 20.4, 47], ['ostrey', 14.8, 61.9, 22.7, 38]];
for (const [vat, bath, plate, room, pace] of vats) rows.push([vat, 'brew', '', 'temperature', 'bath-over-room', 'load', bath, 'K', 0.1], [vat, 'brew', '', 'temperature', 'plate', 'load', plate, 'degC', 0.2], [vat, '', '', 'temperature', 'room', 'load', room, 'degC', 0.1], [vat, 'brew', '', 'speed', 'paddle', 'load', pace, 'rpm', 0.3], [vat, 'brew', '', 'power', 'paddle', 'load', pace / 10, 'W', 0.1]);
for (const [how, duty] of [['mash', 71.5], ['steep', 18.2]] as const) rows.push(['tarvin', how, '', 'duty', 'burner', 'load', duty, '%', 0.2]);
const record = factsOf(rows, `kind,id,spoken
setup,tarvin,the Tarvin
setup,pellow,the Pellow
setup,ostrey,the Ostrey
setting,brew,brewing
setting,mash,mashing
setting,steep,steeping
part,burner,burner duty;the burner
part,bath-over-room,bath;over room
part,plate,the plate
part,paddle,paddle;paddle speed
part,room,room
measure,temperature,temperature;degrees
measure,speed,speed;rpm
measure,duty,duty;percent
measure,power,power;watts
`);

const told: Told[] = [
  ['from what it is counted, of another part', 'Brewing, the plate of the Tarvin is N degrees over the room.', '37.1', '34.1'],
  ['the part that is called so', 'Brewing, the bath of the Tarvin is N kelvin over room.', '12.4', '14.4'],
  ['of one thing after another', 'Brewing, the plate of the Pellow is 29.2 degrees above the room and that of the Ostrey N.', '39.2', '32.9', 'open'],
  ['the quantity in the name of the part', 'Brewing, the Pellow had the N paddle speed of the three.', 'highest', 'lowest'],
  ['more points of it than elsewhere', 'Mashing, the burner duty was N percentage points higher than steeping.', '53', '43'],
  ['the quantity of its own', 'Mashing, the duty was N percentage points higher than steeping.', '53', '43'],
];

rightAndWrong(record, told);
