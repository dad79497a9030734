// A number that nothing says the kind of, before any quantity was named, says nothing about those that follow.
import { expect, test } from 'vitest';
import { said } from './bench-record.js';

test.each([
  'Two controllers, then. The slow setting, which is 3.17. Flat out, 4.02. On the wall stand at slow the block is at 62 degrees.',
  'Firmware: slow is 2.44, brisk 2.61.',
])('%s', (text) => expect(said(text).filter((m) => m.verdict === 'disagrees')).toEqual([]));
