// A stretch of which neither end is on record is no claim that could be wrong; one end that is wrong is.
import { describe, expect, test } from 'vitest';
import { said } from './bench-record.js';

describe('ends of a stretch', () => {
  test.each([
    'With the wall stand on the slow setting the block is at 62 degrees. Its fan ramp is flat from 64 to 72 degrees, which is why.',
    'On the wall stand at the brisk setting the coolant sits at 36.5 degrees. The valve opens anywhere between 30 and 33 degrees.',
  ])('%s', (text) => expect(said(text).filter((m) => m.verdict === 'disagrees')).toEqual([]));
  test.each([
    ['On the wall stand the block goes from 62 degrees on slow to 58 when it is flat out.', '58'],
    ['On the floor stand the coolant comes down from 48 degrees on slow to 36 flat out.', '48 degrees'],
  ])('%s', (text, wrong) => expect(said(text).filter((m) => m.verdict === 'disagrees').map((m) => m.text)).toEqual([wrong]));
});
