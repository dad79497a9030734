// One quantity said two ways in two places: sentences that speak of the same things in the same words, with another number.
import type { Mention } from '../script/index.js';
import { roundsTo } from '../wording/index.js';
import { keptOf } from './kept-of.js';
import type { Parsed } from './parse.js';
import type { SelfCheck, SelfFault, SelfSentence } from './self-check.js';

export const selfTwice: SelfCheck = {
  code: 'self-twice',
  says: 'The same quantity is said with two values in two places',
  help: 'Say it with one value, or name what differs between the two.',
  right: [
    'Under load the core on the open bench reaches 61 degrees. Remember, the open bench core reached 61 degrees under load.',
    'Under load the core on the open bench reaches 61.4 degrees. Later the core on the open bench reached 61 degrees under load.',
    '# Open bench\nUnder load, the core of the card reaches 61 degrees.\n\n# Closed case\nUnder load, the core of the card reaches 66 degrees.',
    'On the open bench the core reaches 61 degrees under load. In the closed case the core reaches 66 degrees under load.',
    'Under load the core on the open bench reached 61 degrees. Under load the core on the open bench rose 29 degrees.',
  ],
  wrong: [
    ['Under load the core on the open bench reaches 61 degrees. The fans are new.\nRemember, the open bench core reached 63 degrees under load.', '63 degrees'],
    ['The Varrow draws 240 watts from the wall in the closed case.\nSo the Varrow drew 250 watts from the wall in the closed case.', '250 watts'],
  ],
  run(all) {
    const known = new Map<number, Map<string, { at: SelfSentence; mention: Mention }>>();
    const out: SelfFault[] = [];
    for (const at of all) {
      const own = signature(at.parsed);
      if (!own) continue;
      let section = known.get(at.section);
      if (!section) known.set(at.section, (section = new Map()));
      const before = section.get(own.key);
      if (!before) { section.set(own.key, { at, mention: own.mention }); continue; }
      const [a, b] = [before.mention, own.mention];
      if (same(a, b)) continue;
      const words = at.parsed.text.slice(b.start, b.end);
      const first = before.at.parsed.text.slice(a.start, a.end);
      const by = before.at.sentence.start;
      out.push({
        code: 'self-twice', start: at.sentence.start + b.start, end: at.sentence.start + b.end, message: `Says ${words}; the same was said with ${first} before`,
        against: [{ start: by + a.start, end: by + a.end, label: `said as ${first}` }],
      });
    }
    return out;
  },
};

/** The things spoken of, whatever the order and the verb; null for a sentence that names too little to be sure. */
const signature = keptOf(sign);

/** Fewer things named than this may be another quantity under the same name. */
const leastNamed = 4;

function sign(p: Parsed): { key: string; mention: Mention } | null {
  if (p.said.length !== 1 || p.quiet.length > 0) return null;
  const { mention: m, cue } = p.said[0]!;
  if (m.type !== 'cardinal' || !m.unit || m.hedge || m.adjectival || m.unit.dimension === 'duration' || m.unit.dimension === 'money') return null;
  if (cue.op !== 'value' && cue.op !== 'change') return null;
  const words = new Set<string>();
  for (let i = 0; i < p.low.length; i++) {
    const w = p.low[i]!;
    if (i >= m.from && i < m.to) continue;
    if (p.tokens[i]!.kind !== 'word') continue;
    if (elsewhere.has(w)) return null;
    if (pointing.has(w) || plainWords.has(w)) continue;
    words.add(w.endsWith('s') ? w.replace(/(?<=\w{3})s$/, '') : w);
  }
  if (words.size < leastNamed) return null;
  return { key: `${cue.op}${cue.overRoom ? ' over room' : ''}|${m.unit.dimension}|${[...words].sort().join(' ')}`, mention: m };
}

function same(a: Mention, b: Mention): boolean {
  const [va, vb] = [a.value.times(a.unit!.factor), b.value.times(b.unit!.factor)];
  if (va.equals(vb)) return true;
  if (a.unit !== b.unit) return false;
  return a.decimals > b.decimals ? roundsTo(a.value, b.value, b) : b.decimals > a.decimals ? roundsTo(b.value, a.value, a) : false;
}

/** What points elsewhere may stand for another thing each time. */
const elsewhere = new Set("it this these those there he she they another other others same one too also next if would could should not no never n't run runs pass first second third".split(' '));
const pointing = new Set(['again', 'now', 'here', 'that', 'then']);

const plainWords = new Set(('the a an of in on at to for with from by as and or but so because than which who what when while where our my your we you i us me is was are were be been being has have had do does did get gets got getting ' +
  'sit sits sat run ran reach reaches reached hit hits draw draws drew drawn pull pulls pulled settle settles settled show shows showed read reads measure measures measured come comes came go goes went land lands landed stay stays stayed hold holds held ' +
  'peak peaks peaked average averages averaged need needs needed see saw seen remember recall again still just only even well okay right later earlier before finally really actually exactly there\'s that\'s it\'s let\'s out up down').split(' '));
