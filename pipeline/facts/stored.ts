// The facts that an episode keeps, and the form in which facts.json keeps them.
import { keyFields, type KeyParts, makeKey, splitKey } from '../records/index.js';
import { approaches } from './approaches.js';
import type { Fact, FactKind } from './fact.js';
import { type Facts, isFact } from './facts.js';
import { figure } from './figure.js';
import { atReferenceRooms } from './reference-room.js';
import { type DifferenceOutcome, outcomeOf } from './outcome.js';
import { uncertaintyOf } from './uncertainty.js';

/**
 * The facts that are shown, said, stated or claimed: those whose ids are handed in, those that the record states, and
 * the mean or constant of every key, temperatures corrected to the reference room where the record names one, and what logged
 * temperatures approach. Each once, ordered by id; what cannot be derived is left out.
 */
export function listFacts(facts: Facts, ids: Iterable<string> = []): Fact[] {
  const found = new Map<string, Fact>();
  const all = [...facts.keys().map((k) => facts.value(k)), ...atReferenceRooms(facts), ...approaches(facts), ...facts.stated(), ...[...ids].map((id) => facts.get(id))];
  for (const f of all) if (isFact(f)) found.set(f.id, f);
  return [...found.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
}

export interface FactRecord extends KeyParts {
  id: string;
  kind: FactKind;
  /** A plain decimal: exact where it ends, else 15 significant digits. */
  value: string;
  /** The unit's id, as in tables: `degC`, `L/min`. */
  unit: string;
  shown: string;
  spoken: string;
  /** The other operands in order, the base last: keys, bracketed fact ids, literals after "=". */
  against: string[];
  /** The keys of the readings it rests on. */
  from: string[];
  variant?: string;
  formula: string;
  readings: { run: string; value: string; unit: string; file: string; line: number }[];
  spread?: { runs: number; sd?: string; min: string; max: string };
  /** Expanded uncertainty, 95 %, in the unit (of temperatures: kelvins or °F of difference); its coverage factor t. */
  uncertainty?: string;
  coverageFactor?: number;
  /** Of differences: the first subject against the second. */
  outcome?: DifferenceOutcome;
  sofa?: string;
  second?: { value: string; unit: string; shown: string; spoken: string };
}

const recorded = new WeakMap<Fact, FactRecord>();

/** Plain data, ready for JSON; the order of the fields is the order in the file. */
export function factRecord(fact: Fact, facts: Facts): Readonly<FactRecord> {
  let record = recorded.get(fact);
  if (!record) recorded.set(fact, (record = makeRecord(fact, facts)));
  return record;
}

function makeRecord(fact: Fact, facts: Facts): FactRecord {
  const uncertainty = uncertaintyOf(facts, fact);
  const outcome = outcomeOf(facts, fact);
  const at = splitKey(fact.subject) ?? splitKey(makeKey({}))!;
  return {
    id: fact.id, kind: fact.kind, value: fact.value.toString(), unit: fact.unit.id, shown: fact.shown, spoken: fact.spoken,
    ...(Object.fromEntries(keyFields.map((f) => [f, at[f]])) as KeyParts),
    against: fact.against, from: fact.keys,
    ...(fact.variant && { variant: fact.variant }),
    formula: fact.formula,
    readings: fact.readings.map((r) => ({ run: r.run, value: r.quantity.value.toFixed(r.quantity.decimals), unit: r.quantity.unit.id, file: r.place.file, line: r.place.line })),
    ...(fact.spread && fact.spread.runs > 1 && {
      spread: { runs: fact.spread.runs, sd: figure(fact.spread.sd!), min: fact.spread.min.toString(), max: fact.spread.max.toString() },
    }),
    ...(uncertainty && { uncertainty: figure(uncertainty.half95, 6), coverageFactor: Number(figure(uncertainty.factor, 5)) }),
    ...(outcome && { outcome }),
    ...(fact.sofa && { sofa: fact.sofa }),
    ...(fact.second && { second: { value: fact.second.value.toString(), unit: fact.second.unit.id, shown: fact.second.shown, spoken: fact.second.spoken } }),
  };
}
