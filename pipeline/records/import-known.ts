// A log whose layout the record has already: only its line under `logs` is new, or not even that.
import { readLogFile } from '../logs/index.js';
import { matchPattern } from './file-patterns.js';
import { type ImportScope, logLine, runInName } from './import-log.js';
import type { Outline } from './outline.js';

/** What to add for a log that a layout of the record reads without an error; undefined where none does. */
export function knownLog(path: string, bytes: Uint8Array, scope: ImportScope, record: Outline): string | undefined {
  const reader = record.wants.find((w) => w.as === 'log' && (w.pattern ? matchPattern(w.pattern, path) : w.path === path));
  if (reader) return `# ${path} is read already, by files: ${JSON.stringify(reader.path)} in line ${reader.place.line} of the record.\n`;
  const layout = [...record.layouts.values()].find((l) => {
    const read = readLogFile(path, bytes, l);
    return read.value && !read.findings.some((f) => f.severity === 'error');
  });
  if (!layout) return undefined;
  const name = runInName(path);
  const sister = record.ctx.fields.logs?.find(({ fields: f }) => name && f.files && runInName(f.files.text)?.pattern === name.pattern);
  const of = sister?.fields.for?.fields;
  const whole: ImportScope = { ...(of?.setup && { setup: of.setup.text }), ...(of?.setting && { setting: of.setting.text }), ...(of?.workload && { workload: of.workload.text }), ...scope };
  const hint = sister && name ? `# All runs at once: one line with files: ${JSON.stringify(name.pattern)}, and no run.\n` : '';
  return `# ${path} has the layout ${layout.name}, which the record has.\n${hint}logs:\n${logLine(path, layout.name, whole, sister !== undefined)}\n`;
}
