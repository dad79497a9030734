// What the class of a sound level meter leaves open.
import { Exact } from '../quantities/index.js';
import type { Fact } from './fact.js';
import type { About } from './facts.js';
import { instrumentOf } from './instruments.js';

/** Acceptance limits at 1 kHz, in decibels: IEC 61672-1:2013 (recalled, not read). */
const limits = { 1: Exact.of(7, 10), 2: Exact.of(1) } as const;

/**
 * Two levels that lie closer together than this are about the same: a meter is right at one frequency within the limits of its
 * class, and two sounds of other pitch may move it that far apart. Undefined where no meter with a class read the level.
 */
export function meterLimit(about: About, fact: Fact): Exact | undefined {
  const meter = fact.unit.dimension === 'sound-level' ? instrumentOf(about.instruments, fact.subject, fact.unit) : undefined;
  return meter?.class && limits[meter.class];
}
