// Numbers that are the speaker's own: marks, what is left, what was paid. Values as in bench-record.ts: noise on the wall
// stand is 24 / 31.5 / 38 dB(A), power 12 / 18 / 30 W, the block 62 / 55 / 52 °C for slow / brisk / flat.
import { describe, expect, test } from 'vitest';
import { said } from './bench-record.js';

const verdicts = (text: string): string[] => said(text).map((m) => `${m.text}: ${m.verdict}`);
const alarms = (text: string): string[] => verdicts(text).filter((v) => v.endsWith('disagrees'));

describe('marks of the speaker', () => {
  test('"my 60" is nothing that was measured', () => expect(alarms('On the wall stand with the brisk setting, the block is at 55 degrees, so it stays under my 60.')).toEqual([]));
  test('"to spare"', () => expect(alarms('On the wall stand with the brisk setting, the block is at 55 degrees, with 9 to spare.')).toEqual([]));
});
