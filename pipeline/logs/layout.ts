// How a log is laid out, as the record says it; no program's own format is named or built in.
import type { Place } from '../places/index.js';
import type { Unit } from '../quantities/index.js';
import type { Encoding } from './encoding.js';

/** A column by its heading, or by its number from 1. */
export interface ColumnName {
  name: string;
  place: Place;
}

export type Take = 'mean' | 'max' | 'min' | 'last' | 'increase';

export interface LogColumn {
  at: ColumnName;
  measure: string;
  part: string;
  /** Set for a constant that the log repeats on every line (a limit in force); then no window counts. */
  phase?: string;
  unit: Unit;
  take: Take;
}

export type LogTime =
  | { kind: 'elapsed'; at: ColumnName; unit: Unit }
  | { kind: 'clock' | 'iso'; at: ColumnName }
  | { kind: 'steps'; seconds: number };

/** A stretch of a phase, or of the whole log: seconds from its start, or back from its end. */
export interface LogWindow {
  phase: string;
  /** The phase it is cut from; undefined cuts it from the whole log. */
  of?: string;
  from?: number;
  to?: number;
  last?: number;
  /** Found by this rule, where `finds`; otherwise what a person gave is compared with what it finds. */
  steady?: { rule: SteadyRule; finds: boolean };
  place: Place;
}

/** What makes a stretch steady. */
export interface SteadyRule {
  kind: 'slope' | 'mser';
  /** Index of the column that decides. */
  column: number;
  /** With slope: how far it may move within `span` seconds, in the unit of its differences or as a share of its level. */
  change: number;
  share: boolean;
  span: number;
  /** "at most 1 K in 5 min". */
  words: string;
}

/** A power column, and where its energy goes. */
export interface LogEnergy {
  /** `measure/part` of the column. */
  of: string;
  as: string;
  unit: Unit;
}

/** What tells that a clock is held back; paths are `measure/part` of columns. */
export interface LogThrottle {
  clock: string;
  limits: string[];
  /** Where the seconds, and where their share of the phase go. */
  time?: string;
  share?: string;
  /** Power from this share of its limit on is at it. */
  at: number;
  /** A clock by this share below where it could stand is held back. */
  below: number;
  place: Place;
}

export interface FrameLayout {
  at: ColumnName;
  unit: Unit;
  phase: string;
  /** `measure/part` of frames over time. */
  average?: string;
  lows: Defined<LowDefinition>[];
  times: Defined<TimeDefinition>[];
  stutters: Defined<StutterDefinition>[];
  /** `measure/part` of how many frames there were. */
  count?: string;
  /** `measure/part` under which each frame is kept as a trace. */
  each?: string;
  /** Which frames at the beginning do not count; undefined where the record does not say. */
  skip?: FrameSkip;
}

export interface Defined<T> {
  /** `measure/part`. */
  as: string;
  definition: T;
  place: Place;
}

/** Which "low" is meant: there are at least four of that name. */
export type LowDefinition =
  | { kind: 'slowest'; percent: number }
  | { kind: 'slowest-time'; percent: number }
  | { kind: 'frame-time-percentile'; percent: number; type: number }
  | { kind: 'rate-percentile'; percent: number; type: number };

export type TimeDefinition = { kind: 'percentile'; percent: number; type: number } | { kind: 'longest' };

/** Frames longer than `times` the median of the `span` frames around each: how many, or what share of the time they take. */
export interface StutterDefinition {
  gives: 'count' | 'share';
  times: number;
  span: number;
}

export type FrameSkip = { kind: 'frames'; frames: number } | { kind: 'seconds'; seconds: number } | { kind: 'warm-up' };

/** What is installed where a record asks for the engine. */
export const enginePackage = '@duckdb/node-api@1.5.6-r.1';

/** A database engine that may be asked for the figures of a large log. */
export interface LogEngine {
  /** A path within the folder where it is installed. */
  module: string;
  /** Bytes from which on it is asked; 32 MB where nothing is said. */
  least?: number;
}

export interface LogLayout {
  name: string;
  delimiter: string;
  decimalComma: boolean;
  encoding?: Encoding;
  comment?: string;
  skip: number;
  /** Lines under the headings that are passed over, such as a line of units. */
  under: number;
  header: boolean;
  missing: ReadonlySet<string>;
  time?: LogTime;
  phaseColumn?: { at: ColumnName; map?: ReadonlyMap<string, string>; place: Place };
  /** No column says the phase: idle where this column is low, load where it is high. */
  phasesBy?: { column: number; place: Place };
  /** The whole log is this phase, where no column and no window says otherwise. */
  phase?: string;
  windows: LogWindow[];
  /** Compared with whole phases, where no windows are given. */
  steady?: SteadyRule;
  columns: LogColumn[];
  energies: LogEnergy[];
  throttle?: LogThrottle;
  frames?: FrameLayout;
  /** Undefined: the log is read here alone. */
  engine?: LogEngine;
  place: Place;
}

/** Sound levels are averaged as energies. */
export function isLevel({ unit }: LogColumn): boolean {
  return unit.dimension === 'sound-level';
}
