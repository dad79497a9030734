// What is passed over as nowhere near is never what the exact comparison would find right.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fits } from '../../pipeline/wording/fair.js';
import { grid } from '../../pipeline/claims/grid.js';
import { onlySet, wasMeasured } from '../../pipeline/claims/measured.js';
import { nowhereNear } from '../../pipeline/claims/nowhere-near.js';
import { isFact } from '../../pipeline/facts/index.js';
import { findMentions, tokens } from '../../pipeline/script/index.js';
import { factsOf, type Row } from './record-of.js';

const names = 'kind,id,spoken\nsetup,varn,the Varn\nsetup,ulmer,the Ulmer\n';
const pair = (a: number, b: number): Row[] => [['varn', 'stock', 'hall', 'power', 'board', 'load', a, 'W'], ['ulmer', 'stock', 'hall', 'power', 'board', 'load', b, 'W']];
const value = fc.integer({ min: 1, max: 9999 }).map((n) => n / 10);

it.each(['difference', 'ratio', 'percent_change', 'percent_of'] as const)('%s', (kind) => {
  fc.assert(fc.property(value, value, fc.integer({ min: -30, max: 30 }), fc.integer({ min: 0, max: 2 }), (p, q, away, decimals) => {
    const facts = factsOf(pair(p, q), names);
    const g = grid(facts);
    const [a, b] = [g.cells[0]!, g.cells[1]!];
    const fact = facts.derive(kind, [a.key, b.key]);
    if (!isFact(fact)) return;
    const said = Math.abs(fact.value.toNumber() * (1 + away / 300)).toFixed(decimals);
    const [m] = findMentions(tokens(said));
    const off = nowhereNear(facts, m!, kind, { in: fact.unit, of: a.unit });
    if (off?.(a, b)) expect(fits(m!, fact, { size: true })).toBe(false);
  }), { numRuns: 400 });
});

it('tells what is far off, and says nothing of a hedge', () => {
  const facts = factsOf(pair(250, 200), names);
  const [a, b] = grid(facts).cells;
  const units = { in: a!.unit, of: a!.unit };
  const off = (text: string): boolean | undefined => nowhereNear(facts, findMentions(tokens(text))[0]!, 'difference', units)?.(a!, b!);
  expect([off('50'), off('51'), off('70 watts'), off('3'), off('at least 3')]).toEqual([false, false, true, true, undefined]);
});

it('tells what was measured from what was only set', () => {
  const facts = factsOf([...pair(250, 200), ['varn', 'stock', '', 'power', 'fan', 'limit', 5, 'W']], names);
  const g = grid(facts);
  const part = g.of.part[0]!;
  expect([wasMeasured(g, 'power', part, 'board'), onlySet(g, 'power', part, 'board'), onlySet(g, 'power', part, 'fan'), onlySet(g, 'power', part, 'core')]).toEqual([true, false, true, false]);
});
