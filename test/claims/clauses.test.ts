// Which words go with which number.
import { expect, test } from 'vitest';
import { grid } from '../../pipeline/claims/grid.js';
import { lexicon } from '../../pipeline/claims/lexicon.js';
import { parse } from '../../pipeline/claims/parse.js';
import { facts } from './bench-record.js';

const g = grid(facts);
const lex = lexicon(facts, g);

test.each([
  ['the block is at 55 and the coolant is at 36', ['the block is at 55', 'and the coolant is at 36']],
  ['from 25 at idle to 41 degrees', ['from 25 at idle', 'to 41 degrees']],
  ['36 on the wall stand and 39 on the floor stand', ['36 on the wall stand', 'and 39 on the floor stand']],
  ['4 degrees below its limit of 50', ['4 degrees below', 'its limit of 50']],
])('%s', (text, stretches) => {
  const p = parse(text, lex);
  expect(p.said.map((s) => p.low.slice(s.segment.from, s.segment.to).join(' '))).toEqual(stretches);
});

test.each([
  ['the block rose 7 degrees', 'change', 'up'], ['it is 7 degrees cooler than before', 'change', 'down'], ['a gap of 7 degrees', 'change', 'apart'], ['it climbs to 55 degrees', 'value', undefined],
  ['12 percent of the limit', 'share', undefined], ['12 percent more than that', 'change', 'up'], ['twice what the slow setting draws', 'ratio', undefined], ['it ran three times', 'count', undefined],
])('%s is a %s', (text, op, way) => {
  const { cue } = parse(text, lex).said[0]!;
  expect([cue.op, cue.way]).toEqual([op, way]);
});
