// Something about an episode that is worth a picture, and why.
import type { Fact } from '../facts/index.js';

export interface Observation {
  about: 'changed' | 'limit' | 'surprise';
  measure: string;
  part: string;
  fact: Fact;
  /** To rank it among those of its kind. */
  weight: number;
  /** A sentence without its full stop; its figures are those of facts. */
  why: string;
}

/** A picture that nobody asked for, with the reason for it. */
export type Proposed<Request> = Request & { why: string };
