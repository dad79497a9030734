// What the readers of a record's sections share.
import { findUnit, type Unit } from '../quantities/index.js';
import { commonMeasures } from './common-names.js';
import type { Reader } from './document.js';
import type { Measure, Reading } from './episode.js';
import type { Names } from './names.js';
import type { RecordDraft } from './record-shape.js';

export interface Context {
  reader: Reader;
  names: Names;
  fields: RecordDraft['fields'];
  keys: RecordDraft['keys'];
}

/** The unit of a value of this measure that is written without one. */
export function usualUnit(ctx: Context, measure: string): Unit | undefined {
  const declared = (ctx.names.map('measure').get(measure) as Measure | undefined)?.unit;
  const common = commonMeasures.get(measure)?.unit;
  return declared ?? (common ? findUnit(common) : undefined);
}

/** Adds a reading unless its key and run stand already, which is a finding. */
export class Readings {
  readonly all: Reading[] = [];
  readonly #seen = new Map<string, Reading>();
  readonly #findings: Reader['findings'];

  constructor(findings: Reader['findings']) {
    this.#findings = findings;
  }

  add(reading: Reading): void {
    const mark = `${reading.key}#${reading.run}`;
    const known = this.#seen.get(mark);
    if (!known) {
      this.#seen.set(mark, reading);
      this.all.push(reading);
      return;
    }
    this.#findings.push({
      code: 'reading-twice', severity: 'error', place: reading.place, subject: reading.key,
      message: reading.run ? `Run ${reading.run} of ${reading.key} stands twice` : `${reading.key} stands twice`,
      related: [{ place: known.place, label: 'the other one' }],
    });
  }
}
