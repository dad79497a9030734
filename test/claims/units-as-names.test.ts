// Words of a unit that are also names, quantities said beside each name of a list, and a verb that looks like a count.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [
  ['birch', 'calm', 'meadow', 'frame_rate', 'mean', 'load', 81.4, 'fps', 0.2], ['birch', 'calm', 'meadow', 'frame_rate', 'low', 'load', 55, 'fps', 0.2],
  ['birch', 'keen', 'meadow', 'frame_rate', 'mean', 'load', 92.1, 'fps', 0.2], ['birch', 'keen', 'meadow', 'frame_rate', 'low', 'load', 73.3, 'fps', 0.2],
  ['birch', 'calm', 'meadow', 'bandwidth', 'read', 'load', 60, 'GB/s', 0.2], ['birch', 'calm', 'meadow', 'bandwidth', 'write', 'load', 52, 'GB/s', 0.2], ['birch', 'calm', 'meadow', 'bandwidth', 'copy', 'load', 47, 'GB/s', 0.2],
  ['birch', 'keen', 'meadow', 'bandwidth', 'read', 'load', 66, 'GB/s', 0.2], ['birch', 'keen', 'meadow', 'bandwidth', 'write', 'load', 58, 'GB/s', 0.2], ['birch', 'keen', 'meadow', 'bandwidth', 'copy', 'load', 49, 'GB/s', 0.2],
];
const names = `kind,id,spoken
setup,birch,the Birch
setting,calm,calm
setting,keen,keen
workload,meadow,the meadow
measure,frame_rate,frame rate;frames per second
measure,bandwidth,bandwidth
part,mean,frames
part,low,low
part,read,read bandwidth
part,write,write bandwidth
part,copy,copy bandwidth
`;
const facts = factsOf(rows, names);
const said = (text: string): Verdict[] => proof(new Source('script.md', text), facts).mentions;
const verdicts = (text: string): string[] => said(text).filter((m) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`);

describe('a piece of a unit names no part', () => {
  const text = (n: string): string => `On the Birch in the meadow, the low goes from 55.0 on calm to 73.3 on keen, which is ${n} frames per second more.`;
  test('right', () => expect(verdicts(text('18.3'))).toEqual(['55.0: agrees', '73.3: agrees', '18.3 frames per second: agrees']));
  test('wrong', () => expect(verdicts(text('19.3')).at(-1)).toBe('19.3 frames per second: disagrees'));
});

describe('the quantity said beside each name of a list', () => {
  const text = (n: string): string => `On the Birch with keen, read bandwidth, write bandwidth and copy bandwidth come to 66, ${n} and 49 gigabytes per second.`;
  test('right', () => expect(verdicts(text('58'))).toEqual(['66: agrees', '58: agrees', '49 gigabytes per second: agrees']));
  test('wrong', () => expect(verdicts(text('56'))).toContain('56: disagrees'));
});

test('"report 24 repeats all of this": a verb, and no count of runs', () => expect(verdicts('Report 24 repeats all of this for the Birch.')).toEqual([]));
