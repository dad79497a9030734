// The typed record of one episode: what a person wrote, with the place of everything.
import type { Place, Severity } from '../places/index.js';
import type { Quantity, Unit } from '../quantities/index.js';
import type { Key } from './key.js';

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

export interface Setup extends Named {
  kind: 'arrangement' | 'product';
  sample?: string;
  obtained?: HowObtained;
  price?: Price;
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
  resolution?: Quantity;
  accuracy?: string;
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
  /**
   * The stretch of a log that it was averaged from; `trace` is empty where the log was not kept as one. `lasted`: seconds of
   * that stretch, and seconds that its phase had lasted at its end. `how` it came of the samples, where it is no mean of them.
   */
  log?: { trace: string; firstLine: number; lastLine: number; samples: number; lasted?: { window: number; phase: number }; how?: string };
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
  windows: readonly { phase: string; start: number; end: number }[];
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
  system: Part[];
  curves: Curve[];
  readings: Reading[];
  traces: Trace[];
  stated: Stated[];
  quotes: Quote[];
  pictures: PictureRequest[];
  accept: Acceptance[];
  thresholds: { name: string; value: string; place: Place }[];
  severities: { code: string; severity: Severity | 'off'; place: Place }[];
  texts: EpisodeText[];
  /** Second unit system beside the first: unit ids by dimension's first unit, e.g. degC → degF. */
  secondUnits: Map<string, string>;
}
