// Kelvins for each watt: how far a thing stands above the air for what it draws.
import { convert, type Unit, unit } from '../quantities/index.js';
import { type Key, splitKey } from '../records/index.js';
import type { Fact } from './fact.js';
import { type Facts, isFact } from './facts.js';
import { isMeasured } from './measured.js';
import { roomParts } from './neighbours.js';

const watt: Unit = unit('W');

/**
 * A temperature's rise over the room for each watt of the same thing: the power of the same part, else the one power of the
 * test that has a limit (that of the thing tested, and not of a pump or a fan beside it); `own` tells which. Undefined where
 * the record has no such pair, or no room.
 */
export function kelvinPerWatt(facts: Facts, key: Key): { fact: Fact; power: Key; own: boolean } | undefined {
  const at = splitKey(key);
  const value = isMeasured(facts, key) ? facts.value(key) : undefined;
  if (!at || !isFact(value) || roomParts.includes(at.part)) return undefined;
  const top = riseOf(facts, key, value);
  const power = top === undefined ? undefined : powerBeside(facts, key);
  const fact = top === undefined || power === undefined ? undefined : facts.derive('per_watt', [top, power]);
  return isFact(fact) ? { fact, power: power!, own: splitKey(power!)!.part === at.part } : undefined;
}

function riseOf(facts: Facts, key: Key, value: Fact): string | undefined {
  if (value.unit.dimension !== 'temperature') return undefined;
  const room = facts.roomFor(key);
  const over = room === undefined || room === key ? undefined : facts.derive('over_room', [key, room]);
  return isFact(over) && over.value.sign() > 0 ? `(${over.id})` : undefined;
}

function powerBeside(facts: Facts, key: Key): Key | undefined {
  const at = splitKey(key)!;
  const test = `${at.setup}/${at.setting}/${at.workload}/`;
  const powers = facts.keys().filter((k) => {
    const p = splitKey(k);
    const value = k.startsWith(test) && p?.phase === at.phase && isMeasured(facts, k) ? facts.value(k) : undefined;
    return isFact(value) && value.value.sign() > 0 && convert(value.value, value.unit, watt) !== undefined;
  });
  const same = powers.filter((k) => at.part !== '' && splitKey(k)!.part === at.part);
  const limited = powers.filter((k) => facts.constantFor(k, 'limit') !== undefined);
  const [chosen, ...others] = same.length ? same : limited;
  return others.length ? undefined : chosen;
}
