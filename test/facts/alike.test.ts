// Values beside each other are shown with the same decimals.
import { expect, test } from 'vitest';
import { Facts, isFact } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { bareEpisode, type Reading, readReadings } from '../../pipeline/records/index.js';

const table = (rows: string[]) => readReadings(new Source('readings.csv', `setup,setting,workload,measure,part,phase,run,value,unit\n${rows.join('\n')}\n`)).value!;
const logged = (r: Reading): Reading => ({ ...r, log: { trace: 't', firstLine: 2, lastLine: 9, samples: 8 } });
const shown = (readings: Reading[]) => {
  const facts = new Facts(bareEpisode(readings, [], new Source('readings.csv', '').place(0)));
  return facts.keys().map((k) => facts.value(k)).map((f) => (isFact(f) ? f.shown : f.why));
};

test('means over a log are shown as coarse as the notes beside them', () => {
  const fromLog = table(['a,stock,,temperature,core,load,1,66.39,degC']).map(logged);
  expect(shown([...fromLog, ...table(['b,stock,,temperature,core,load,1,58,degC'])])).toEqual(['66 °C', '58 °C']);
  expect(shown(fromLog)).toEqual(['66.39 °C']);
});

test('notes that dropped a final zero stay as fine as their neighbours', () => {
  expect(shown(table(['a,,,power,board,load,1,248,W', 'b,,,power,board,load,1,247.6,W']))).toEqual(['248 W', '247.6 W']);
});

test('idle beside load keeps its own decimals', () => {
  const idle = table(['a,,,power,board,idle,1,14.1,W']);
  expect(shown([...table(['a,,,power,board,load,1,298.33,W']).map(logged), ...idle])).toEqual(['298.33 W', '14.1 W']);
});
