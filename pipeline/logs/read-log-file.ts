// Any log by its layout: frame durations or sensors.
import type { Outcome, Source } from '../places/index.js';
import { frameLog } from './frame-log.js';
import type { LogLayout } from './layout.js';
import { type LogResult, sensorLog } from './sensor-log.js';
import type { StatedFor } from './throttle.js';

export function readLogFile(source: Source, layout: LogLayout, stated?: StatedFor): Outcome<LogResult> {
  return layout.frames ? frameLog(source, layout, layout.frames) : sensorLog(source, layout, stated);
}
