// Measures, phases and parts that need no declaring: their usual unit, which end is better, how they are spoken.
// Common practice, no published source; a record overrides any of it under `measures:` and `phases:`.
// Power is neither: less of it is a cost saved, more of it a limit used; the person decides which is meant.
import type { Measure } from './episode.js';

type MeasureRow = [id: string, unit: string, better: Measure['better'], spoken: string[]];

const measureRows: MeasureRow[] = [
  ['temperature', 'degC', 'lower', ['temperature']],
  ['power', 'W', 'neither', ['power', 'power draw']],
  ['noise', 'dB(A)', 'lower', ['noise', 'noise level', 'sound level']],
  ['frame_rate', 'fps', 'higher', ['frame rate', 'frames per second']],
  ['frame_time', 'ms', 'lower', ['frame time']],
  ['frames', 'frame-count', 'neither', ['number of frames']],
  ['stutters', '1', 'lower', ['number of stutters']],
  ['frequency', 'MHz', 'higher', ['clock', 'frequency', 'clock speed']],
  ['voltage', 'V', 'neither', ['voltage']],
  ['current', 'A', 'neither', ['current']],
  ['resistance', 'mOhm', 'lower', ['resistance']],
  ['fan_speed', 'rpm', 'neither', ['fan speed']],
  ['pump_speed', 'rpm', 'neither', ['pump speed']],
  ['flow', 'L/min', 'higher', ['flow', 'flow rate']],
  ['airflow', 'm3/h', 'higher', ['airflow']],
  ['pressure', 'Pa', 'neither', ['pressure']],
  ['energy', 'Wh', 'neither', ['energy']],
  ['charge', 'mAh', 'neither', ['charge']],
  ['duration', 's', 'neither', ['duration', 'time']],
  ['throttled_time', 's', 'lower', ['throttled time']],
  ['throttled_share', '%', 'lower', ['throttled share']],
  ['ratio', '%', 'neither', ['share']],
  ['efficiency', '%', 'higher', ['efficiency']],
  ['utilisation', '%', 'neither', ['utilisation', 'load']],
  ['mass', 'g', 'neither', ['mass', 'weight']],
  ['length', 'mm', 'neither', ['length']],
  ['data_rate', 'MB/s', 'higher', ['data rate', 'transfer rate', 'throughput']],
  ['score', 'score', 'higher', ['score']],
  ['illuminance', 'lx', 'neither', ['illuminance']],
  ['price', '', 'lower', ['price']],
];

export interface CommonMeasure {
  id: string;
  unit: string;
  better: Measure['better'];
  spoken: readonly string[];
}

export const commonMeasures: ReadonlyMap<string, CommonMeasure> = new Map(measureRows.map(([id, unit, better, spoken]) => [id, { id, unit, better, spoken }]));

/** Phases of a test, and of constants: what a thing may reach, is asked to reach, is moved by, is sold as, is set to. */
export const commonPhases: ReadonlyMap<string, readonly string[]> = new Map([
  ['idle', ['at idle', 'idle']],
  ['load', ['under load', 'load']],
  ['limit', ['the limit', 'limit']],
  ['target', ['the target', 'target']],
  ['offset', ['the offset', 'offset']],
  ['rated', ['the rating', 'rated']],
  ['set', ['as set', 'set']],
]);

/** The phases that a setting's own parameters may stand under. */
export const constantPhases = ['limit', 'target', 'offset', 'rated', 'set'] as const;

export const commonParts: ReadonlyMap<string, readonly string[]> = new Map([
  ['room', ['the room', 'room']],
]);
