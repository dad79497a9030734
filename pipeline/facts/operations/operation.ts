// What a kind of fact is: what it takes, and how it is computed.
import type { Exact, Unit } from '../../quantities/index.js';
import type { Fact } from '../fact.js';
import type { About, Facts, Underivable } from '../facts.js';

export interface Result {
  value: Exact;
  unit: Unit;
  /** Written when it is asked for: most facts are only compared. */
  readonly formula: string;
  spread?: Fact['spread'];
}

export interface Operation {
  /** What it takes, in words for an error: "a subject and a base". */
  takes: string;
  least: number;
  most?: number;
  /** First one is the default. */
  variants?: readonly string[];
  /** Is handed the runs of its operands themselves. */
  leaf?: boolean;
  /** Subtracting, or dividing, the rounded figures may give another number than the rounded result: then the fact says so. */
  onTheSofa?: boolean;
  /** `facts` for those that look into logs. */
  run(inputs: Fact[], variant: string, about: About, facts?: Facts): Result | Underivable;
}
