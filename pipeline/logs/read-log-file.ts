// Any log by its layout: frame durations or sensors.
import type { Lines, Outcome } from '../places/index.js';
import type { Bytes } from './bytes.js';
import { frameLog } from './frame-log.js';
import type { LogLayout } from './layout.js';
import { LogText } from './log-text.js';
import { type LogResult, sensorLog } from './sensor-log.js';
import type { StatedFor } from './throttle.js';

/** `lines` are those of the file, where it is a text at all; they can be asked for as long as the bytes can be read. */
export function readLogFile(file: string, bytes: Bytes | Uint8Array, layout: LogLayout, stated?: StatedFor): Outcome<LogResult> & { lines?: Lines } {
  const text = LogText.open(file, bytes, layout.encoding);
  if (!(text instanceof LogText)) return { value: undefined, findings: [text] };
  const read = layout.frames ? frameLog(text, layout, layout.frames) : sensorLog(text, layout, stated);
  return text.trouble ? { value: undefined, findings: [text.trouble] } : { ...read, lines: text };
}
