// Tables that stand alone, without a record to declare anything in.
import { expect, test } from 'vitest';
import { Source } from '../../pipeline/places/index.js';
import { readNames, readReadings } from '../../pipeline/records/index.js';

const header = 'setup,setting,workload,measure,part,phase,run,value,unit\n';

test('a unit that nobody knows is taken at its word, and compares with itself only', () => {
  const { value, findings } = readReadings(new Source('readings.csv', `${header}deck,,,wear,pad,load,1,12,flurps\n`), { alone: true });
  expect(findings).toEqual([]);
  expect(value![0]!.quantity.unit).toMatchObject({ id: 'flurps', symbol: 'flurps' });
});

test('ids may be written as people write them, short of what a fact id gives a meaning to', () => {
  const row = (setup: string) => readReadings(new Source('readings.csv', `${header}"${setup}",,,power,board,load,1,12,W\n`), { alone: true }).findings.length;
  expect(['1% low', 'Deck A+', 'a b'].map(row)).toEqual([0, 0, 0]);
  expect(['a/b', 'a#2', 'a~b', '(a)', 'a=b'].map(row)).toEqual([1, 1, 1, 1, 1]);
  expect(readNames(new Source('names.csv', 'kind,id,spoken\npart,1% low,the lows\n'), { alone: true }).findings).toEqual([]);
});

test('within a record both are findings', () => {
  expect(readReadings(new Source('readings.csv', `${header}1% low,,,wear,pad,load,1,12,flurps\n`)).findings.map((f) => f.code).sort()).toEqual(['table-id', 'table-unit']);
});
