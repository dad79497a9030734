// The typed record of one episode: what a person wrote, with the place of everything.
import type { Place, Severity } from '../places/index.js';
import type { Exact, Quantity, Unit } from '../quantities/index.js';
import type { Build, Theme } from '../theme/index.js';
import type { Limits } from './accuracy.js';
import type { Steady } from '../logs/index.js';
import type { Key } from './key.js';
import type { MotionRequest } from './motion-shape.js';

/** Something with a name: the id used in keys, the name shown, the ways it is spoken (first one is used for narration). */
export interface Named {
  id: string;
  name: string;
  spoken: string[];
  place: Place;
}

export type HowObtained = 'bought' | 'lent' | 'sponsored' | 'given' | 'own';

export interface Price {
  amount: Quantity;
  /** ISO 8601 day on which the price was seen. */
  date?: string;
  place: Place;
}

/** What flows in a loop. Paths are `measure/part`, of the readings that tell the heat it carries. */
export interface Coolant {
  fluid: 'water' | 'ethylene glycol' | 'propylene glycol';
  /** Glycol, in percent by volume. */
  share: Exact;
  flow?: string;
  /** Behind and before the source of heat. */
  warm?: string;
  cold?: string;
  /** The electrical power that heats it. */
  power?: string;
  place: Place;
}

export interface Setup extends Named {
  kind: 'arrangement' | 'product';
  sample?: string;
  obtained?: HowObtained;
  price?: Price;
  /** Where it is another than the episode's. */
  coolant?: Pick<Coolant, 'fluid' | 'share' | 'place'>;
}

/** How a configuration differs from another: its limits, targets, offsets … also stand among the readings, as constants. */
export interface Setting extends Named {
  kind?: 'stock' | 'power-limit' | 'undervolt' | 'overclock' | 'fan-curve' | 'speed' | 'load-step' | 'other';
  /** Keys of the constants that this setting brings with it. */
  parameters: Key[];
  note?: string;
}

export interface Measure extends Named {
  better: 'lower' | 'higher' | 'neither';
  /** The smallest difference that matters, where known. */
  matters?: Quantity;
  unit?: Unit;
  /** How it is defined, e.g. which "1 % low" is meant. */
  definition?: string;
}

export interface Instrument {
  name: string;
  /** Measures (or `measure/part`) that it reads. */
  measures: string[];
  /** The setups that it was used for, where not for all. */
  setups?: string[];
  /** Smallest step it shows, as a difference. */
  resolution?: Quantity;
  /** As its sheet prints it. */
  accuracy?: string;
  /** The same, read. */
  limits?: Limits;
  /** Share of cases in which its error stays within the limits (0.95); where undefined, it always does and is as likely anywhere between them. */
  level?: number;
  /** Of a sound level meter, after IEC 61672-1. */
  class?: 1 | 2;
  /** Each setup has one of its own (the sensors of a product under test), so that errors do not cancel between setups. */
  perSetup?: boolean;
  place: Place;
}

export interface Reading {
  key: Key;
  /** The run's name ("1"), empty for a constant (limit, target, rated value, price). */
  run: string;
  quantity: Quantity;
  constant: boolean;
  place: Place;
  /** Set aside: kept and reported, never averaged. */
  aside?: { reason: string; place: Place };
  /** Of a result taken from another episode: how many runs it is the mean of there, 1 where it is no mean. None where what is quoted was set and not read. */
  runs?: number;
  /** Of a result taken from another episode: its standard uncertainty there, in the reading's unit, and its degrees of freedom. */
  uncertain?: { standard: number; dof: number };
  /**
   * The stretch of a log that it was averaged from; `trace` is empty where the log was not kept as one. `lasted`: seconds of
   * that stretch, and seconds that its phase had lasted at its end. `standardError` of a mean, in the unit of differences, and the
   * `effective` number of independent samples, both from the scatter of this stretch alone. `steady`: what the layout's rule
   * finds in the phase, whether it gave the stretch or stands beside it. `how` it came of the samples, where it is no mean of them.
   */
  log?: { trace: string; firstLine: number; lastLine: number; samples: number; lasted?: { window: number; phase: number }; standardError?: number; effective?: number; steady?: Steady; how?: string };
}

/** One column of one log over time. Times in seconds from the log's start; a gap or an empty cell is NaN. */
export interface Trace {
  /** `setup/setting/workload/measure/part#run`. */
  id: string;
  setup: string;
  setting: string;
  workload: string;
  measure: string;
  part: string;
  run: string;
  unit: Unit;
  times: readonly number[];
  values: readonly number[];
  /** Of a long log, whose values are means over short stretches: the lowest and the highest in each. */
  lows?: readonly number[];
  highs?: readonly number[];
  windows: readonly { phase: string; start: number; end: number; steady?: Steady }[];
  place: Place;
}

/** A value that the person has already said or written elsewhere; kind and operands as in a fact's id. */
export interface Stated {
  /** `rise`, or with its form behind a point: `rank.highest`. */
  kind: string;
  /** Subject first, base last: keys, or fact ids in brackets. */
  operands: string[];
  quantity: Quantity;
  /** "thumbnail", "pinned comment" … */
  where?: string;
  place: Place;
  valuePlace: Place;
}

/** What was wrong in a published episode, and the fact that is right. */
export interface Correction {
  /** As it was said or shown: "31 K". */
  said: string;
  saidPlace: Place;
  /** A fact id, or a key. */
  fact: string;
  factPlace: Place;
  /** What was told as right, where it is written down. */
  is?: { quantity: Quantity; place: Place };
  /** A time mark ("3:12"), "thumbnail", "description" … */
  where: string;
  /** ISO 8601. */
  date?: string;
  reason?: string;
  place: Place;
}

/** A result of another episode, by fact id and not by copy; it stands among this episode's readings under `as`. */
export interface Quote {
  episode: string;
  fact: string;
  as: Key;
  /** What it was when it was quoted; a difference now is a finding. */
  was?: Quantity;
  place: Place;
}

export interface Acceptance {
  code: string;
  subject: string;
  reason: string;
  place: Place;
}

/** A picture asked for; the renderers know what each kind needs. Lists keep the order in which things are shown. */
export interface PictureRequest {
  kind: string;
  medium?: 'chart' | 'graphic';
  /** File-name part, kebab-case. */
  name: string;
  title?: string;
  setups?: string[];
  settings?: string[];
  workload?: string;
  measure?: string;
  part?: string;
  phase?: string;
  /** Fact ids, for call-outs and before/after pairs. */
  facts?: string[];
  text?: string;
  /** How it moves, where it does so otherwise than the other pictures. */
  motion?: Build | 'none';
  place: Place;
}

export interface Part {
  name: string;
  detail?: string;
  obtained?: HowObtained;
  place: Place;
}

/** A small table such as fan duty against temperature. */
export interface Curve {
  id: string;
  name: string;
  of: { label: string; unit: Unit };
  against: { label: string; unit: Unit };
  points: { at: Quantity; value: Quantity }[];
  place: Place;
}

/** A text that belongs to the episode and carries numbers. `text` is undefined when it stands in a file that could not be read. */
export interface EpisodeText {
  role: 'script' | 'title' | 'thumbnail' | 'description' | 'chapters';
  text: string;
  place: Place;
}

export interface Episode {
  id: string;
  title: string;
  /** ISO 8601. */
  date?: string;
  place: Place;
  summary?: string;
  disclosures: { text: string; place: Place }[];
  method: { text: string; place: Place }[];
  /** Free cautions of the author, besides those that the record calls for. */
  cautions: { text: string; place: Place }[];
  versions: { name: string; version: string; place: Place }[];
  instruments: Instrument[];
  setups: Map<string, Setup>;
  settings: Map<string, Setting>;
  workloads: Map<string, Named>;
  measures: Map<string, Measure>;
  parts: Map<string, Named>;
  phases: Map<string, Named>;
  coolant?: Coolant;
  system: Part[];
  curves: Curve[];
  readings: Reading[];
  traces: Trace[];
  stated: Stated[];
  corrections: Correction[];
  quotes: Quote[];
  pictures: PictureRequest[];
  /** How pictures look; the usual way where the record says nothing. */
  theme?: Theme;
  /** "1920x1080": the sizes asked for; all where the record says nothing. */
  sizes?: { size: string; place: Place }[];
  /** Pictures that move. */
  motion?: MotionRequest;
  accept: Acceptance[];
  thresholds: { name: string; value: string; place: Place }[];
  severities: { code: string; severity: Severity | 'off'; place: Place }[];
  texts: EpisodeText[];
  /** Second unit system beside the first: unit ids by dimension's first unit, e.g. degC → degF. */
  secondUnits: Map<string, string>;
  /** What temperatures are corrected to, where the record asks for it. */
  referenceRoom?: Quantity;
  /** How many digits are shown: as the readings have them, or as many as the uncertainty earns. */
  digits?: 'read' | 'earned';
}
