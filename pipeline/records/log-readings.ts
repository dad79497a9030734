// The logs that a record names, to readings and traces.
import { enginePackage, type LogLayout, readLogFile } from '../logs/index.js';
import { type Finding, type Lines, nearest, type Place } from '../places/index.js';
import type { Quantity } from '../quantities/index.js';
import type { Trace } from './episode.js';
import { byNumber, matchPattern, type Placeholder } from './file-patterns.js';
import type { Given } from './given.js';
import { isId, makeKey, splitKey } from './key.js';
import type { Outline, Want } from './outline.js';
import { count } from './tables.js';

interface LogFile {
  path: string;
  layout: LogLayout;
  setup: string;
  setting: string;
  workload: string;
  run: string;
  want: Want;
}

export interface LogReadings {
  traces: Trace[];
  sources: Lines[];
  /** Set when a log gave nothing: then readings that are missing are no news. */
  incomplete: boolean;
}

/** `engine` is where DuckDB is installed, if it is. */
export function readLogs(outline: Outline, given: Given, engine?: string): LogReadings {
  const { reader } = outline.ctx;
  const from = reader.findings.length;
  const result: LogReadings = { traces: [], sources: [], incomplete: false };
  for (const file of logFiles(outline, given, result, engine)) {
    const bytes = given.bytes(file.path, file.want);
    if (!bytes) {
      result.incomplete = true;
      continue;
    }
    const log = readLogFile(given.name(file.path), bytes, file.layout, (measure, part, phase) => constantOf(outline, file, { measure, part, phase }));
    reader.findings.push(...log.findings);
    if (log.lines) result.sources.push(log.lines);
    if (!log.value) {
      result.incomplete = true;
      continue;
    }
    take(outline, file, log.value, result);
  }
  tellOnce(reader.findings, from);
  return result;
}

/** What the record says wrongly of every log of a pattern is told once. */
function tellOnce(findings: Finding[], from: number): void {
  const seen = new Map<string, { first: Finding; more: number }>();
  for (const f of findings.splice(from)) {
    const mark = ['log-column', 'log-phase-missing'].includes(f.code) ? `${f.code} ${f.place.line}:${f.place.column} ${f.said ?? ''}` : `${seen.size}`;
    const known = seen.get(mark);
    if (known) known.more++;
    else seen.set(mark, { first: f, more: 0 });
  }
  for (const { first, more } of seen.values()) findings.push(more ? { ...first, message: `${first.message} (and so with ${count(more, 'more file')})` } : first);
}

function take(outline: Outline, file: LogFile, log: NonNullable<ReturnType<typeof readLogFile>['value']>, result: LogReadings): void {
  const { ctx, readings } = outline;
  const { setup, setting, workload, run } = file;
  const scope = { setup, setting, workload };
  const traceId = (measure: string, part: string) => `${makeKey({ ...scope, measure, part }).split('/').slice(0, 5).join('/')}#${run}`;
  const kept = new Set(log.traces.map((t) => traceId(t.measure, t.part)));
  for (const v of log.values) {
    if (!ctx.names.use('phase', v.phase, v.place)) continue;
    const key = makeKey({ ...scope, measure: v.measure, part: v.part, phase: v.phase });
    const id = traceId(v.measure, v.part);
    const same = v.constant ? readings.all.find((r) => r.key === key && r.constant) : undefined;
    if (same?.quantity.value.equals(v.quantity.value)) continue;
    readings.add({
      key, run: v.constant ? '' : run, quantity: v.quantity, constant: v.constant, place: v.place,
      ...(!v.constant && { log: { trace: kept.has(id) ? id : '', firstLine: v.firstLine, lastLine: v.lastLine, samples: v.samples, ...(v.lasted && { lasted: v.lasted }), ...v.scatter, ...(v.steady && { steady: v.steady }), ...(v.how && { how: v.how }) } }),
    });
  }
  for (const t of log.traces) {
    result.traces.push({ id: traceId(t.measure, t.part), ...scope, measure: t.measure, part: t.part, run, unit: t.unit, times: t.times, values: t.values, ...(t.lows && { lows: t.lows, highs: t.highs }), windows: t.windows, place: file.want.place });
  }
}

/** A limit, target or rating that the record states for the test of a log; of several the most specific. */
function constantOf({ readings }: Outline, { setup, setting, workload }: LogFile, at: { measure: string; part: string; phase: string }): Quantity | undefined {
  let best: Quantity | undefined;
  let most = -1;
  for (const r of readings.all) {
    const k = r.constant ? splitKey(r.key) : undefined;
    if (!k || k.measure !== at.measure || k.part !== at.part || k.phase !== at.phase) continue;
    if ([[k.setup, setup], [k.setting, setting], [k.workload, workload]].some(([own, of]) => own && own !== of)) continue;
    const score = (k.setting ? 4 : 0) + (k.setup ? 2 : 0) + (k.workload ? 1 : 0);
    if (score > most) [best, most] = [r.quantity, score];
  }
  return best;
}

function logFiles(outline: Outline, given: Given, result: LogReadings, engine: string | undefined): LogFile[] {
  const { ctx, layouts, wants } = outline;
  const { reader, names } = ctx;
  const files: LogFile[] = [];
  for (const { fields: f } of ctx.fields.logs ?? []) {
    const want = wants.find((w) => w.as === 'log' && w.place === f.files?.place);
    if (!want || !f.layout) {
      result.incomplete = true;
      continue;
    }
    const written = layouts.get(f.layout.text);
    if (!written) {
      const near = nearest(f.layout.text, layouts.keys());
      reader.fail(f.layout.place, 'unknown-name', `unknown layout "${f.layout.text}"${near ? `; did you mean ${near}?` : layouts.size ? `; known are ${[...layouts.keys()].join(', ')}` : '; give it under layouts'}`, { said: f.layout.text, subject: f.layout.text, ...(near && { suggest: near }) });
      result.incomplete = true;
      continue;
    }
    const layout = f.engine ? withEngine(reader, f.engine, written, engine) : written;
    if (!layout) {
      result.incomplete = true;
      continue;
    }
    const { pattern } = want;
    const paths = pattern ? given.paths().filter((p) => matchPattern(pattern, p)).sort(byNumber) : [want.path];
    if (pattern && paths.length === 0) {
      result.incomplete = true;
      reader.fail(want.place, 'file-missing', `no file fits ${want.path}`, { said: want.path, subject: want.path });
    }
    for (const path of paths) {
      const match = pattern && matchPattern(pattern, path, { setup: names.map('setup').keys(), setting: names.map('setting').keys(), workload: names.map('workload').keys() });
      if (match?.other) tellAmbiguous(outline, want, path, match.ids, match.other);
      const said = { ...fixed(f.for?.fields), ...(f.run && { run: f.run.text }), ...match?.ids };
      const known = (['setup', 'setting', 'workload'] as const).every((k) => {
        const id = said[k] ?? '';
        if (id && !isId(id)) {
          reader.fail(want.place, 'unknown-name', `"${id}" in the name of ${path} is no ${k}`, { said: id });
          return false;
        }
        return names.use(k, id, want.place, `in the name of ${path}`);
      });
      if (!known) {
        result.incomplete = true;
        continue;
      }
      files.push({ path, layout, want, setup: said.setup ?? '', setting: said.setting ?? '', workload: said.workload ?? '', run: said.run ?? '1' });
    }
  }
  return files;
}

/** Undefined, and a finding, where the engine is not there or nothing for such logs. */
function withEngine(reader: Outline['ctx']['reader'], { place }: { place: Place }, layout: LogLayout, module: string | undefined): LogLayout | undefined {
  if (layout.frames) reader.fail(place, 'record-form', `engine is for sensor logs; of a frame log (layout ${layout.name}) every frame is held`, { said: 'duckdb' });
  else if (module === undefined) reader.fail(place, 'log-engine', `DuckDB is not installed; npm install --no-save ${enginePackage} does it, in the folder of the program or in the one that you work in; or leave engine out, the figures are the same`, { said: 'duckdb' });
  else return { ...layout, engine: { module } };
  return undefined;
}

function tellAmbiguous(outline: Outline, want: Want, path: string, ids: Partial<Record<Placeholder, string>>, other: Partial<Record<Placeholder, string>>): void {
  const inWords = (m: typeof ids) => Object.entries(m).map(([kind, id]) => `${kind} ${id}`).join(', ');
  outline.ctx.reader.fail(want.place, 'log-name-ambiguous', `the name ${path} can be read in two ways: as ${inWords(ids)}, which is taken, or as ${inWords(other)}; name the file so that it can be told, or give it a line of its own`, { severity: 'warning', said: path, subject: path });
}

function fixed(scope: Partial<Record<Placeholder, { text: string }>> | undefined): Partial<Record<Placeholder, string>> {
  return Object.fromEntries(Object.entries(scope ?? {}).map(([k, w]) => [k, w.text]));
}
