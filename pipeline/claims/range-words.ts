// Words before a number that make it an end of a range: "stays between 21.4 and 22.0".
import { WordClass } from '../script/index.js';
import type { Mention } from '../script/index.js';
import type { Segment } from './clauses.js';

const rangeVerbs = /^(?:between|stays?|stayed|sits?|sat|ranges?|ranged|hovers?|hovered|varies|varied|lies|lay|fits?|runs|ran|keeps?|kept|spans?|anywhere|within|spread|goes|went|was|is|were|are|averaged|averages|remained|remains|holds?|held|:)$/;

const ranging = new WordClass(/^(?:stays?|stayed|ranges?|ranged|hovers?|hovered|varies|varied|anywhere|remained|remains)$/);

export function isRange(low: readonly string[], m: Mention, seg: Segment): boolean {
  const before = low.slice(Math.max(seg.from, m.from - 8), m.from);
  if (before.includes('between')) return true;
  return before.some((w) => ranging.has(w)) && rangeVerbs.test(before.find((w) => rangeVerbs.test(w)) ?? '');
}
