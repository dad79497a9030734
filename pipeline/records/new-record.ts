// A record to fill in: short, commented, and sound as it stands.
import { isId } from './key.js';

export interface NewRecord {
  title: string;
  setups?: readonly string[];
  settings?: readonly string[];
  workload?: string;
  date?: string;
}

/** Names may be given as shown ("Open bench") or as ids; the YAML reads without a finding of the record reader. */
export function newRecord({ title, setups = ['Open bench'], settings = ['Stock'], workload = 'Test scene', date }: NewRecord): string {
  const taken = new Set<string>();
  const named = (names: readonly string[]) => names.map((name) => ({ name, id: idFrom(name, taken) }));
  const [s, c] = [named(setups), named(settings)];
  const w = { name: workload, id: idFrom(workload, new Set()) };
  const line = ({ id, name }: { id: string; name: string }) => `  ${id}: {name: ${quoted(name, true)}}`;
  const blocks = s.flatMap((setup) => c.map((setting) => `  # - for: {setup: ${setup.id}, setting: ${setting.id}, workload: ${w.id}}
  #   room: 21.0 21.2 21.1 °C
  #   temperature/core: {idle: 38 38 39 °C, load: 67 67 68 °C}
  #   power/board: {load: 247.6 248.3 248.1 W}
  #   frame_rate/average: {load: 96.1 96.4 96.3 fps}
  #   noise/card: {load: 36.4 36.5 36.3 dB(A)}
`));
  return `# An editor completes the fields by the schema that "figureproof schema" prints.
# Take away the "# " in front of what you need. Each value is written once, here; everything else is computed from it.
title: ${quoted(title)}
${date ? `date: ${date}` : '# date: 2026-03-14'}

# What was lent, bought or sponsored, and how it was tested.
disclosures:
method:
  - Each figure is the mean of three runs.

# What was measured with, and how finely it reads.
instruments:
  # - {name: room thermometer, measures: [temperature/room], resolution: 0.1 °C, accuracy: ±0.5 °C}
  # - {name: wall meter, measures: [power], resolution: 0.1 W, accuracy: ±1 %}
  # - {name: sound meter at half a metre, measures: [noise], resolution: 0.1 dB(A), class: 2}

# Physical arrangements, or products (kind: product, price: $499, price date: 2026-03-01, obtained: bought).
setups:
${s.map(line).join('\n')}

# How it was configured; limits, targets and offsets with their units.
settings:
${c.map(line).join('\n')}
  # limit-80: {name: Power limit 80 %, kind: power-limit, limit: {power/board: 200 W}}
  # undervolt: {kind: undervolt, target: {voltage/core: 0.90 V}}

workloads:
  ${w.id}: {name: ${quoted(w.name, true)}, spoken: [${quoted(`the ${w.name.charAt(0).toLowerCase()}${w.name.slice(1)}`, true)}]}

# Where it was read. Temperature, power, noise, frame_rate, frequency and the like need no telling.
parts:
  core: {name: Core, spoken: [the core, core]}
  board: {name: Board, spoken: [the board, board]}
  card: {name: Card, spoken: [the card]}
  average: {name: Average, spoken: [on average]}
  room: {name: Room, spoken: [the room]}

# What flows in a liquid loop, and the readings that tell how much heat it carries away.
# coolant: {fluid: ethylene glycol 30 %, flow: flow/loop, warm: temperature/coolant-out, cold: temperature/coolant-in, power: power/heater}

# What holds throughout: limits, rated values.
constants:
  # power/board/limit: 250 W
  # temperature/core/limit: 90 °C

# The runs, as read: 67 67 68 °C is three runs; x stands for a run without a value.
readings:
${blocks.join('')}
# Readings may also stand in a table with the header setup,setting,workload,measure,part,phase,run,value,unit,
# or come from sensor logs ("figureproof import LOG" proposes a layout). In a layout the averaged part of each phase is
# given, windows: {idle: last 15 s, load: last 60 s}, or found, windows: {idle: steady, load: steady}: from where on a
# part's temperature moves by at most 1 K in 5 min. Another rule stands in the layout, steady: {change: 1 K, within: 60 s}
# or steady: {rule: mser}, and is also compared with windows that are given. Which part is idle and which is load says a
# column, phases: {column: stage}, or a quantity that is low in the one and high in the other, phases: {by: power/board}.
# tables: [readings.csv]

# Values that you have already said or written elsewhere, to be checked.
stated:
  # - {rise: ${s[0]?.id ?? ''}/${c[0]?.id ?? ''}/${w.id}/temperature/core/load, is: 29 K, where: thumbnail}

# What was wrong once it was published, with the fact that is right; it stands on the page and has a graphic.
corrections:
  # - {said: 76 °C, fact: ${s[0]?.id ?? ''}/${c[0]?.id ?? ''}/${w.id}/temperature/core/load, where: 3:12, reason: the digits had changed places}

# script: script.md
`;
}

function idFrom(name: string, taken: Set<string>): string {
  const plain = name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '');
  const base = isId(plain) ? plain : 'name';
  let id = base;
  for (let n = 2; taken.has(id); n++) id = `${base}-${n}`;
  taken.add(id);
  return id;
}

/** As a YAML text: plain where that is safe, else in double quotes. */
export function quoted(text: string, inFlow = false): string {
  const plain = /^[\p{L}][\p{L}\p{N}_ ().,'/%°+-]*$/u.test(text) && !/^(null|true|false|yes|no|on|off|y|n|nan|inf)$/i.test(text) && text.trim() === text && !(inFlow && text.includes(','));
  return plain ? text : JSON.stringify(text);
}
