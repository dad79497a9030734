// Which graphics suit an episode whose record asks for none.
import { type Fact, type Facts, isFact, isMeasured, type Key, type PictureRequest, roomParts, splitKey, withFields } from '../facts/index.js';
import { mostRows } from '../theme/index.js';

/** A title, the conditions, and up to four figures of the first measures. */
export function planGraphics(facts: Facts): PictureRequest[] {
  const { about } = facts;
  const out: PictureRequest[] = [];
  const ask = (request: Omit<PictureRequest, 'place'>): void => void out.push({ ...request, place: about.place });
  if (about.title.trim()) ask({ kind: 'chapter', name: 'title' });
  ask({ kind: 'conditions', name: 'conditions' });
  const [first, second] = measures(facts);
  if (!first) return out;
  const key = first.key;
  const idle = facts.idleOf(key);
  const rise = idle && facts.derive('rise', [key, idle]);
  if (rise && isFact(rise)) ask({ kind: 'figure', name: 'figure-rise', facts: [rise.id] });
  const otherSetups = facts.sameBut(key, 'setup').filter((k) => isMeasured(facts, k));
  const otherSettings = facts.sameBut(key, 'setting').filter((k) => isMeasured(facts, k));
  if (otherSetups.length === 1) {
    const difference = facts.derive('difference', [otherSetups[0]!, key]);
    if (isFact(difference)) ask({ kind: 'before-after', name: 'between-setups', facts: [difference.id] });
  }
  const other = otherSettings[0];
  if (other) {
    const difference = facts.derive('difference', [other, key]);
    if (isFact(difference)) ask({ kind: 'before-after', name: 'between-settings', facts: [difference.id] });
    const pair = second && [withFields(second.key, { setting: splitKey(other)!.setting }), second.key];
    const changed = pair && facts.derive(hasRatios(second.fact) ? 'percent_change' : 'difference', pair);
    if (changed && isFact(changed)) ask({ kind: 'figure', name: 'figure-change', facts: [changed.id] });
  }
  const listed = [key, ...otherSetups];
  if (listed.length > 2 && listed.length <= mostRows) {
    const ids = listed.map((k) => facts.value(k)).filter(isFact).map((f) => f.id);
    ask({ kind: 'ranking', name: 'ranking', facts: ids });
  }
  return out;
}

/** For each measure with a better end, in the order of the record, its first value under load: of the first setup, setting and part. */
function measures(facts: Facts): { key: Key; fact: Fact }[] {
  const { about } = facts;
  const orders = { setup: [...about.setups.keys()], setting: [...about.settings.keys()], workload: [...about.workloads.keys()], part: [...about.parts.keys()] };
  const rank = (key: Key): number[] => {
    const p = splitKey(key)!;
    return (['setup', 'setting', 'workload', 'part'] as const).map((f) => orders[f].indexOf(p[f]));
  };
  return [...about.measures.values()].filter((m) => m.better !== 'neither').flatMap((m) => {
    const keys = facts.keys().filter((k) => {
      const p = splitKey(k)!;
      return p.measure === m.id && p.phase !== '' && p.phase !== 'idle' && !roomParts.includes(p.part) && isMeasured(facts, k);
    }).map((key) => ({ key, rank: rank(key) }));
    const first = keys.sort((a, b) => a.rank.reduce((sum, r, i) => sum || r - b.rank[i]!, 0))[0];
    const fact = first && facts.value(first.key);
    return first && fact && isFact(fact) ? [{ key: first.key, fact }] : [];
  });
}

/** Percents of temperatures and of levels mean nothing. */
function hasRatios(fact: Fact): boolean {
  return !['temperature', 'sound-level'].includes(fact.unit.dimension);
}
