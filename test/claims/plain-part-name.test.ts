// A quantity and its plain kind are called alike, and another kind by a word of its own before it: only that one is meant.
import { rightAndWrong } from './right-and-wrong.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = ([['skerry', 131, 88], ['tarn', 126, 81], ['holm', 118, 70]] as const).flatMap(([pump, plain, least]): Row[] => [[pump, 'brisk', 'well', 'flow', 'usual', 'load', plain, 'L/h', 1], [pump, 'brisk', 'well', 'flow', 'trickle', 'load', least, 'L/h', 1]]);
const pumps = factsOf(rows, `kind,id,spoken
setup,skerry,the Skerry
setup,tarn,the Tarn
setup,holm,the Holm
setting,brisk,brisk;on brisk
workload,well,the well
measure,flow,flow rate
part,usual,flow rate;usual
part,trickle,last trickle
phase,load,under load`);

rightAndWrong(pumps, [
  ['beside another', 'On brisk in the well, the Skerry and the Tarn differ on last trickle flow rate, at 88 and N litres per hour respectively.', '81', '84'],
  ['in a list without a word for its order', 'With brisk in the well, the Skerry and the Tarn have a last trickle flow rate of 88 and N litres per hour.', '81', '93'],
  ['alone it is the plain one', 'On brisk in the well, the Tarn has a flow rate of N litres per hour.', '126', '121'],
]);
