// Every caution, its words, and what in a record calls for it. None tells how to get round a limit; each defers to makers' instructions,
// local codes and qualified people.
import type { Dimension } from '../quantities/index.js';

/** Where a word may stand: the names of parts, setups and instruments, the parts list, the method. */
export type Where = 'part' | 'setup' | 'instrument' | 'system' | 'method' | 'measure';

export type Sign =
  /** A word in a text of the record; whole words, case aside. */
  | { sign: 'word'; words: RegExp; where: readonly Where[] }
  /** A reading of this dimension that reaches `least` (in `unit`), of these parts only where given. */
  | { sign: 'reading'; dimension: Dimension; least: string; unit: string; parts?: RegExp; notParts?: RegExp; source: string }
  /** A setting of this kind. */
  | { sign: 'setting'; kind: string }
  /** A setting whose power limit is above that of the stock setting. */
  | { sign: 'raised-limit' }
  /** A setting with a positive frequency offset, or with a voltage target or a negative voltage offset. */
  | { sign: 'offset'; of: 'frequency' | 'voltage'; sense: 'up' | 'down' };

export interface CautionRule {
  code: string;
  text: string;
  /** The same in one sentence, where there is little room. */
  brief: string;
  /** What it is about, in a few words. */
  subject: string;
  signs: readonly Sign[];
}

export const cautionRules: readonly CautionRule[] = [
  {
    code: 'mains',
    text: 'Mains voltage can kill. Measure only with a meter made and certified for it that plugs in between, never open a power supply, and leave all work on mains wiring to a qualified electrician under your local electrical code.',
    brief: 'Mains voltage can kill: certified plug-in meters only; wiring is an electrician’s work.',
    subject: 'mains voltage',
    signs: [
      { sign: 'word', words: /\b(mains|wall|wall socket|wall outlet|socket|outlet|line voltage|power suppl(y|ies))\b/i, where: ['part', 'instrument', 'measure', 'setup'] },
      { sign: 'reading', dimension: 'voltage', least: '50', unit: 'V', source: 'IEC 61140 extra-low voltage, 50 V alternating (from memory)' },
    ],
  },
  {
    code: 'liquid',
    text: 'Liquid and powered parts do not mix. Fill, test for leaks and drain with the power disconnected, follow the instructions of the makers of every part in the loop, and ask a qualified person when in doubt.',
    brief: 'Liquid and live parts do not mix: fill, leak-test and drain unplugged.',
    subject: 'liquid near powered parts',
    signs: [
      { sign: 'word', words: /\b(coolant|liquid|water|water ?block|reservoir|glycol|tubing|pump)\b/i, where: ['part', 'setup', 'system', 'method', 'measure'] },
      { sign: 'reading', dimension: 'flow', least: '0', unit: 'L/min', source: 'a flow means a liquid' },
    ],
  },
  {
    code: 'high-current',
    text: 'High-current connectors can overheat and burn when they are not fully seated, bent close to the plug or worn. Use only the cables that the maker of the power supply names for it, follow the card maker’s instructions, and stop at once at any smell or discolouration.',
    brief: 'High-current plugs can burn: seat them fully, with the makers’ own cables.',
    subject: 'high-current plugs',
    signs: [
      { sign: 'reading', dimension: 'power', least: '225', unit: 'W', parts: /\b(board|card|gpu|graphics)\b/i, source: 'slot 75 W and one 150 W connector: ATX power supply design guide' },
      { sign: 'reading', dimension: 'current', least: '20', unit: 'A', source: 'common practice, no published source' },
      { sign: 'word', words: /\b(12V-2x6|12VHPWR|auxiliary connectors?)\b/i, where: ['part', 'setup', 'system', 'method'] },
    ],
  },
  {
    code: 'overclock',
    text: 'Running a part beyond its maker’s ratings can damage it, lose data and end its warranty. What this sample held another may not: stay within the limits that the maker allows and follow its instructions.',
    brief: 'Running beyond ratings can damage parts: keep to what the maker allows.',
    subject: 'running beyond ratings',
    signs: [{ sign: 'setting', kind: 'overclock' }, { sign: 'offset', of: 'frequency', sense: 'up' }],
  },
  {
    code: 'undervolt',
    text: 'Less voltage than the maker set can make a machine crash and lose data, even after hours of seeming stability. Samples differ, so these values are a result and no recommendation; check the maker’s instructions and warranty terms first.',
    brief: 'Too little voltage can crash a machine and lose data: samples differ.',
    subject: 'lowered voltage',
    signs: [{ sign: 'setting', kind: 'undervolt' }, { sign: 'offset', of: 'voltage', sense: 'down' }],
  },
  {
    code: 'raised-limit',
    text: 'A raised power limit puts more load on the part, its connectors, the power supply and the cooling than their makers may have planned for. Keep within what each maker allows, in writing, and within the rating of the circuit it hangs on.',
    brief: 'A raised power limit loads parts, plugs and wiring more than planned.',
    subject: 'raised power limits',
    signs: [{ sign: 'raised-limit' }],
  },
  {
    code: 'hot-surface',
    text: 'Parts in this test got hot enough to burn skin. Let everything cool down before touching it, keep hands and cables away while it runs, and follow the maker’s instructions for handling.',
    brief: 'Parts here get hot enough to burn skin: let them cool first.',
    subject: 'hot surfaces',
    signs: [{ sign: 'reading', dimension: 'temperature', least: '60', unit: 'degC', source: 'EN ISO 13732-1, bare metal touched for a few seconds (from memory)' }],
  },
  {
    code: 'noise',
    text: 'Sound at this level can harm hearing over time. Keep your distance, wear hearing protection and follow the limits of your local occupational rules.',
    brief: 'Sound at this level can harm hearing: keep away, wear protection.',
    subject: 'loud sound',
    signs: [{ sign: 'reading', dimension: 'sound-level', least: '80', unit: 'dB(A)', source: 'Directive 2003/10/EC, lower exposure action value 80 dB(A), upper 85 dB(A), both over eight hours (from memory)' }],
  },
  {
    code: 'battery',
    text: 'Lithium batteries can catch fire when they are damaged, overheated or charged wrongly. Never open, bend or pierce one, stop using one that swells, charge only as the maker says, and take it for disposal where your local rules tell you to.',
    brief: 'Damaged or hot batteries can catch fire: charge as the maker says.',
    subject: 'batteries',
    signs: [
      { sign: 'word', words: /\b(batter(y|ies)|lithium)\b/i, where: ['part', 'system', 'method'] },
      { sign: 'reading', dimension: 'charge', least: '0', unit: 'mAh', source: 'a charge in ampere-hours means a battery' },
    ],
  },
  {
    code: 'moving-fan',
    text: 'Fans turn without warning. Keep fingers, hair, sleeves and cables clear of them, disconnect the power before reaching in, and follow the maker’s instructions for guards.',
    brief: 'Fans start without warning: unplug before you reach in.',
    subject: 'fans that start unasked',
    signs: [
      { sign: 'word', words: /\b(fans?|blower)\b/i, where: ['part', 'setup', 'system', 'measure'] },
      { sign: 'reading', dimension: 'rotation', least: '0', unit: 'rpm', notParts: /\bpump\b/i, source: 'a speed of rotation, and no pump’s, means a fan' },
    ],
  },
  {
    code: 'opened',
    text: 'Taking a cooler off or a product apart can damage it and end its warranty. Follow the maker’s service instructions, with the power disconnected, or have a qualified person do it.',
    brief: 'Opening a product can damage it and void its warranty.',
    subject: 'opened products',
    signs: [{ sign: 'word', words: /\b(thermal paste|paste|thermal pads?|heat ?spreader|lid removed|opened up|disassembl\w+)\b/i, where: ['part', 'setup', 'system', 'method'] }],
  },
];
