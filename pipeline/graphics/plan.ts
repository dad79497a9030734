// Which graphics suit an episode whose record asks for none, and why.
import { correctionsOf, type Fact, type Facts, isFact, isMeasured, type Key, type PictureRequest, quantityName, roomParts, splitKey, withFields } from '../facts/index.js';
import { changed, hasRatios, limits, type Proposed, surprises } from '../story/index.js';
import { cautionsFor } from '../cautions/index.js';
import { mostRows } from '../theme/index.js';
import { mostParts } from './parts.js';
import { mostSettings } from './settings.js';

/** A title, the conditions, parts and settings; a graphic for what changed most, what comes near a limit and what surprised, up to six of them; a summary, and the end card. */
export function planGraphics(facts: Facts): Proposed<PictureRequest>[] {
  const { about } = facts;
  const out: Proposed<PictureRequest>[] = [];
  const shown = new Set<string>();
  const ask = (request: Omit<Proposed<PictureRequest>, 'place'>): void => {
    for (const id of request.facts ?? []) shown.add(id);
    out.push({ ...request, place: about.place });
  };
  if (about.title.trim()) ask({ kind: 'chapter', name: 'title', why: 'every episode has a title' });
  ask({ kind: 'conditions', name: 'conditions', why: 'every result has its conditions' });
  if (about.system.length > 1 && about.system.length <= mostParts) ask({ kind: 'parts', name: 'parts', why: 'the record says what it was tested with' });
  const setting = [...about.settings.values()].filter((s) => s.parameters.length > 0);
  if (about.settings.size > 1 && about.settings.size <= mostSettings && setting.length > 0) ask({ kind: 'settings', name: 'settings', why: 'the settings differ in what they set' });
  const [first] = measures(facts);
  if (!first) {
    last(facts, ask);
    return out;
  }
  const { key } = first;
  const parts = splitKey(key)!;
  const idle = facts.idleOf(key);
  const rise = idle && facts.derive('rise', [key, idle]);
  if (rise && isFact(rise)) ask({ kind: 'figure', name: 'figure-rise', facts: [rise.id], why: `${quantityName(about, parts.measure, parts.part)} is the first measure of the record, and was read at idle too` });
  const setups = facts.sameBut(key, 'setup').filter((k) => isMeasured(facts, k));
  const [moved] = changed(facts, 'setup');
  if (setups.length === 1 && moved) ask({ kind: 'before-after', name: 'between-setups', facts: [moved.fact.id], why: most(moved.why) });
  const [set, ...next] = changed(facts, 'setting');
  if (set) ask({ kind: 'before-after', name: 'between-settings', facts: [set.fact.id], why: most(set.why) });
  const after = next.find((o) => hasRatios(o.fact) && o.measure !== set?.measure && o.measure !== moved?.measure) ?? next.find((o) => hasRatios(o.fact) && o.measure !== set?.measure);
  const change = after && facts.derive('percent_change', [after.fact.subject, ...after.fact.against]);
  if (after && isFact(change)) ask({ kind: 'figure', name: 'figure-change', facts: [change.id], why: after.why });
  // What is reached in percent has a chart of its own; what is left of a temperature has none.
  const [near] = limits(facts).filter((o) => o.fact.kind === 'difference');
  if (near) ask({ kind: 'figure', name: 'figure-limit', title: `${quantityName(about, near.measure, near.part)}, ${near.fact.value.sign() < 0 ? 'left to' : 'below'} its limit`, facts: [near.fact.id], why: near.why });
  const [surprise] = surprises(facts).filter((o) => !shown.has(o.fact.id));
  if (surprise) ask({ kind: 'before-after', name: 'surprise', facts: [surprise.fact.id], why: surprise.why });
  const listed = [key, ...setups];
  if (listed.length > 2 && listed.length <= mostRows) {
    const ids = listed.map((k) => facts.value(k)).filter(isFact).map((f) => f.id);
    ask({ kind: 'ranking', name: 'ranking', facts: ids, why: `${listed.length === 3 ? 'three' : 'several'} setups can be ranked by the first measure of the record` });
  }
  const sums = changesOf(facts, set?.fact ?? moved?.fact);
  if (sums.length > 1) ask({ kind: 'summary', name: 'summary', facts: sums.map((f) => f.id), why: `${sums.length} measures change together` });
  last(facts, ask);
  return out;
}

/** What was said wrong is told before the end card. */
function corrections(facts: Facts, ask: (request: Omit<Proposed<PictureRequest>, 'place'>) => void): void {
  correctionsOf(facts).forEach(({ correction: c, fact }, i, all) => {
    ask({ kind: 'correction', name: all.length === 1 ? 'correction' : `correction-${i + 1}`, facts: [fact.id], text: c.said.replace(/[.!]+$/, ''), why: `the record corrects what was said (${c.where})` });
  });
}

/** What was disclosed and what to be careful about stand at the end. */
function last(facts: Facts, ask: (request: Omit<Proposed<PictureRequest>, 'place'>) => void): void {
  corrections(facts, ask);
  if (facts.about.disclosures.length > 0 || cautionsFor(facts).length > 0) ask({ kind: 'end', name: 'end', why: 'what was disclosed, and what to be careful about' });
}

/** What else changes where the one that changed most does: of each measure its first part, so that none crowds out another, as percent where that means something. */
function changesOf(facts: Facts, main: Fact | undefined): Fact[] {
  const [from, to] = main ? [splitKey(main.keys[1] ?? ''), splitKey(main.subject)] : [];
  if (!main || !from || !to) return [];
  const seen = new Set<string>();
  return facts.keys().flatMap((key): Fact[] => {
    const p = splitKey(key)!;
    const same = p.setup === to.setup && p.setting === to.setting && p.workload === to.workload && p.phase === to.phase;
    if (!same || seen.has(p.measure) || roomParts.includes(p.part) || (facts.about.measures.get(p.measure)?.better ?? 'neither') === 'neither' || !isMeasured(facts, key)) return [];
    const base = withFields(key, { setup: from.setup, setting: from.setting });
    const value = facts.value(key);
    const change = isFact(value) ? facts.derive(hasRatios(value) ? 'percent_change' : 'difference', [key, base]) : undefined;
    if (!change || !isFact(change)) return [];
    seen.add(p.measure);
    return [change];
  }).slice(0, mostRows);
}

function most(why: string): string {
  return `${why}, the most of all for what matters in it`;
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
