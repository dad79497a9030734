// A number that the writer has pinned: tied to the fact named, whose value is then checked as any other; or no claim.
import { type Fact, type Facts, isFact, readId, suggestIds } from '../facts/index.js';
import type { Finding, Source } from '../places/index.js';
import { type Mention, type Pin, readPins } from '../script/index.js';
import type { Candidate } from './context.js';
import { fit } from './decide.js';
import type { Grid } from './grid.js';
import type { Reading } from './read.js';
import type { Term } from './terms.js';

/** The pins of a script by where their words stand; those that do not fit are findings. */
export class Pinned {
  readonly findings: Finding[] = [];
  readonly #script: Source;
  readonly #facts: Facts;
  readonly #pins: { pin: Pin; fact: Fact | undefined; met: boolean }[] = [];

  constructor(script: Source, facts: Facts) {
    this.#script = script;
    this.#facts = facts;
    const { pins, faults } = readPins(script.text);
    for (const f of faults) this.#report(f.code, f, f.message, { suggest: f.suggest });
    for (const pin of pins) {
      const fact = pin.fact === undefined ? undefined : facts.get(pin.fact);
      if (pin.fact === undefined || isFact(fact)) this.#pins.push({ pin, fact: isFact(fact) ? fact : undefined, met: false });
      else this.#unknown(pin, fact?.why);
    }
  }

  get any(): boolean {
    return this.#pins.length > 0;
  }

  /** Whether a pin speaks of something in the span. */
  within(start: number, end: number): boolean {
    return this.#pins.some(({ pin }) => pin.at.start < end && start < pin.at.end);
  }

  /** The reading that a pin gives a mention whose sentence begins at `offset`; undefined where there is none. */
  read(g: Grid, m: Mention, offset: number): Reading | undefined {
    const own = this.#pins.find(({ pin }) => pin.at.start < offset + m.end && offset + m.start < pin.at.end);
    if (!own) return undefined;
    if (own.met) {
      this.#report('pin-ambiguous', own.pin, `"${own.pin.words}" holds more than one number; pin each by itself`);
      return undefined;
    }
    own.met = true;
    if (!own.fact) return { mention: m, verdict: 'not-a-claim', why: 'pinned as no claim', ranked: [] };
    const candidate = candidateFor(g, own.fact);
    const fits = fit(m, candidate);
    return { mention: m, verdict: fits ? 'agrees' : 'disagrees', chosen: candidate, why: candidate.why, ranked: [{ candidate, fits }] };
  }

  /** Once all mentions are read: pins whose words hold no number. */
  finish(): Finding[] {
    for (const { pin, met } of this.#pins) if (!met) this.#report('pin-words', pin, `No number is read in "${pin.words}", so there is nothing to pin`);
    return this.findings;
  }

  #unknown(pin: Pin, why: string | undefined): void {
    const near = suggestIds(this.#facts, pin.fact!, 3);
    const what = why === undefined ? `"${pin.fact}" is no fact's id` : `There is no fact "${pin.fact}": ${why}`;
    this.#report('pin-fact', pin, `${what}${near.length ? `; nearest: ${near.join(', ')}` : ''}`, { suggest: near[0] });
  }

  #report(code: string, at: { start: number; end: number }, message: string, more: { suggest?: string | undefined } = {}): void {
    const { start, end } = at;
    this.findings.push({ code, severity: 'error', place: this.#script.place(start, end), said: this.#script.text.slice(start, end), message: `${message}.`, ...(more.suggest !== undefined && { suggest: more.suggest }) });
  }
}

function candidateFor(g: Grid, fact: Fact): Candidate {
  const parsed = readId(fact.id)!;
  const term: Term = { kind: fact.kind === 'constant' || fact.kind === 'raw' ? 'mean' : fact.kind, ...(parsed.variant && { variant: parsed.variant }), args: parsed.operands };
  const subject = g.byKey.get(fact.subject);
  return { cost: 0, term, fact, kind: fact.kind, sign: 0, ...(subject && { subject }), firm: true, exact: fact.kind === 'count', why: 'pinned to this fact' };
}
