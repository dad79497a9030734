// "the old valve … the new": adjectives that stand alone for the thing they tell from its like, and who wins a table.
import { expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const boiler = factsOf([['first', 212, 'old'], ['second', 187, 'new']].flatMap(([, v, id]): Row[] => [[`${id}-valve`, '', 'soak', 'fan_speed', 'fan', 'load', Number(v) * 3, 'rpm', 2], [`${id}-valve`, '', 'soak', 'duration', 'soak', 'load', Number(v), 's', 1]]), `kind,id,spoken
setup,old-valve,old valve
setup,new-valve,new valve
workload,soak,the soak
measure,fan_speed,fan speed
measure,duration,time
part,fan,fan
`);
const race = factsOf([['corrow', 212], ['ashlar', 239], ['tembry', 251]].map(([id, s]): Row => [id as string, '', 'wash', 'duration', 'wash', 'load', s as number, 's', 1]), `kind,id,spoken
setup,corrow,the Corrow
setup,ashlar,the Ashlar
setup,tembry,the Tembry
workload,wash,the wash
measure,duration,time;seconds
`);
const verdicts = (text: string, facts: typeof race): string => proof(new Source('script.md', text), facts).mentions.filter((m) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`).join();

test('an adjective stands for its thing', () => {
  expect(verdicts('In the soak the fan turns at 636 with the old valve and 75 rpm slower with the new.', boiler)).toBe('636: agrees,75 rpm: agrees');
  expect(verdicts('In the soak the fan turns at 636 with the old valve and 75 rpm faster with the new.', boiler)).toMatch(/75 rpm: disagrees/);
});

test('who wins says which way the table runs', () => {
  expect(verdicts('The Corrow wins the wash with 212 seconds, and the Ashlar comes second.', race)).toBe('212 seconds: agrees,second: agrees');
  expect(verdicts('The Corrow wins the wash with 212 seconds, and the Ashlar comes third.', race)).toMatch(/third: disagrees/);
});
