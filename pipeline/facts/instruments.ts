// Which instrument read a value, and what that leaves open about it.
import { convert, differenceUnit, Exact, type Unit } from '../quantities/index.js';
import { type Instrument, type Key, splitKey } from '../records/index.js';

type Instruments = readonly Instrument[];

/** The one that names the part, else the one that names the measure; of several the one whose sheet speaks of this kind of unit. */
export function instrumentOf(instruments: Instruments, key: Key, u: Unit): Instrument | undefined {
  const at = splitKey(key);
  if (!at) return undefined;
  const used = instruments.filter((i) => !i.setups || i.setups.includes(at.setup));
  for (const name of [`${at.measure}/${at.part}`, at.measure]) {
    const named = used.filter((i) => i.measures.includes(name));
    const best = named.find((i) => stepOfInstrument(i, u) || i.limits?.constant.some((q) => inDifferences(q, u))) ?? named[0];
    if (best) return best;
  }
  return undefined;
}

/** Its smallest step as a difference in units of `u`; undefined where it states none of that kind. */
export function stepOfInstrument(instrument: Instrument, u: Unit): Exact | undefined {
  const step = instrument.resolution && inDifferences(instrument.resolution, u);
  return step && step.sign() > 0 ? step : undefined;
}

/** Its limits of error for values in units of `u`: the part that grows with the reading, as a share, and the part that does not. */
export function limitsOfInstrument(instrument: Instrument, u: Unit): { share: number; constant: number } {
  const { limits } = instrument;
  if (!limits) return { share: 0, constant: 0 };
  const constants = limits.constant.map((q) => inDifferences(q, u) ?? Exact.zero);
  const digits = limits.digits.times(stepOfInstrument(instrument, u) ?? Exact.zero);
  return { share: limits.share.toNumber(), constant: constants.reduce((a, b) => a.plus(b), digits).toNumber() };
}

/** What shares its errors: one measure and part read by one instrument, in each setup apart where each has its own. */
export function channelOf(instruments: Instruments, instrument: Instrument, key: Key): string {
  const at = splitKey(key)!;
  return [`${instruments.indexOf(instrument)}`, at.measure, at.part, ...(instrument.perSetup ? [at.setup] : [])].join('/');
}

/** "0.5 °C" and "0.5 K" are steps alike. */
function inDifferences({ value, unit: from }: { value: Exact; unit: Unit }, u: Unit): Exact | undefined {
  return convert(value, differenceUnit(from), differenceUnit(u));
}
