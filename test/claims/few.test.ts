import { expect, test } from 'vitest';
import fc from 'fast-check';
import { Few } from '../../pipeline/claims/few.js';

test('a map of few entries does what a map does', () => {
  const step = fc.tuple(fc.constantFrom('set', 'delete', 'clear', 'get' as const), fc.constantFrom('a', 'b', 'c', 'd'), fc.integer({ min: 0, max: 9 }));
  fc.assert(fc.property(fc.array(step, { maxLength: 20 }), (steps) => {
    const [few, map] = [new Few(), new Map<string, number>()];
    for (const [what, key, cost] of steps) {
      if (what === 'set') { few.set(key, cost); map.set(key, cost); } else if (what === 'delete') { few.delete(key); map.delete(key); } else if (what === 'clear' && cost === 0) { few.clear(); map.clear(); }
      expect(few.keys()).toEqual([...map.keys()]);
      expect([few.size, few.get(key), few.has(key)]).toEqual([map.size, map.get(key), map.has(key)]);
      expect(few.some((k) => k === key)).toBe(map.has(key));
      const told: string[] = [];
      for (let x = few.first; x; x = x.next) told.push(x.key);
      expect(told).toEqual([...map.keys()]);
    }
  }));
});
