// How it was tested: what was compared, how many runs, the room.
import { type Fact, isFact } from '../../facts/index.js';
import type { Stage } from '../scenes.js';
import type { Draft } from '../sentence.js';

const section = 'How it was tested';

export function conditions(stage: Stage): Draft[] {
  return [...compared(stage), ...runs(stage), ...room(stage)];
}

function compared({ facts, points }: Stage): Draft[] {
  // House rules are no contender, whatever they set.
  const holders = new Set(facts.holders());
  const one = (field: 'setup' | 'setting') => [...new Map(points.filter((p) => p.parts[field] && !(field === 'setup' && holders.has(p.parts.setup))).map((p) => [p.parts[field], p.key])).values()];
  const setups = one('setup');
  const settings = one('setting');
  const contenders = setups.length > 2 && points.every((p) => facts.about.setups.get(p.parts.setup)?.kind === 'product');
  const counts = [
    { keys: setups, fact: setups.length > 1 && facts.derive('count', setups, 'setups'), word: contenders ? 'contenders' : 'setups' },
    { keys: settings, fact: settings.length > 1 && facts.derive('count', settings, 'settings'), word: 'settings' },
  ].flatMap(({ fact, word }) => (fact && isFact(fact) ? [{ fact, word }] : []));
  if (counts.length === 0) return [];
  return [{ section, facts: counts.map((c) => c.fact), text: (v) => `We tested ${counts.map(({ fact, word }) => `${v.count(fact)} ${word}`).join(' at ')}` }];
}

function runs({ facts, points }: Stage): Draft[] {
  const measured = points.map((p) => p.key).filter((k) => facts.readings(k).some((r) => !r.constant));
  if (measured.length === 0) return [];
  const sizes = measured.map((k) => facts.readings(k).length);
  const least = Math.min(...sizes);
  const most = Math.max(...sizes);
  if (most === 1) return [{ section, facts: [], text: () => 'Every figure comes from a single run' }];
  const fact = facts.derive('count', [measured[sizes.indexOf(most)]!], 'runs');
  if (!isFact(fact)) return [];
  return [{ section, facts: [fact], text: (v) => (least === most ? `Every figure is the mean of ${v.count(fact)} runs` : `No figure is the mean of more than ${v.count(fact)} runs`) }];
}

function room({ facts, rooms }: Stage): Draft[] {
  if (rooms.length === 0) return [];
  const low = facts.derive('range', rooms, 'low');
  const high = facts.derive('range', rooms, 'high');
  if (!isFact(low) || !isFact(high)) return [];
  const same = (a: Fact, b: Fact) => a.value.round(a.decimals).equals(b.value.round(b.decimals));
  if (same(low, high)) return [{ section, facts: [low], text: (v) => `The room averaged ${v.say(low)}` }];
  return [{ section, facts: [low, high], text: (v) => `The room averaged between ${v.number(low)} and ${v.say(high)}` }];
}
