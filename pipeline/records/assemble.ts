// The second of two steps: tables, logs and texts join the outline, and all that refers to readings is tied to them.
import type { Lines, Outcome, Source } from '../places/index.js';
import { readCorrections } from './corrections-section.js';
import type { Episode, Measure, Setting, Setup } from './episode.js';
import { Given, type GivenFile } from './given.js';
import { keyFields, splitKey } from './key.js';
import { readLogs } from './log-readings.js';
import { isThemeFile, type Outline } from './outline.js';
import { References } from './references.js';
import { readAccepted, readStated, setAside } from './said-section.js';
import { readNames, readReadings, type TableOptions } from './tables.js';
import { readTheme, shippedTheme, type TemplateReader } from './theme-file.js';
import type { ShippedTheme } from './theme-shape.js';

/**
 * The episode, as far as it can be read; nothing should be built from it while there are errors among the findings
 * (those of `outline` included). `given` holds the bytes of each wanted file by its path, or why they cannot be had;
 * `template` reads what is shipped with the program; `engine` is where DuckDB is installed, if it is.
 */
export function assemble(outline: Outline, given: ReadonlyMap<string, GivenFile>, template: TemplateReader = noTemplates, engine?: string): Outcome<Episode> & { sources: Lines[] } {
  const { ctx, readings, source } = outline;
  const { reader, names, fields } = ctx;
  const before = reader.findings.length;
  const files = new Given(given, outline);
  const sources: Lines[] = [];
  let incomplete = reader.findings.some((f) => f.severity === 'error');

  for (const t of fields.names ?? []) {
    const text = t?.file && files.text(t.file.text, wantOf(outline, t.file.place), t.encoding?.value);
    if (!text) continue;
    sources.push(text);
    const read = readNames(text, optionsOf(t));
    reader.findings.push(...read.findings);
    for (const { kind, ...n } of read.value ?? []) {
      if (!names.use(kind, n.id, n.place)) continue;
      const known = names.map(kind).get(n.id)!;
      known.spoken = [...new Set([...n.spoken, ...known.spoken])];
    }
  }

  for (const t of fields.tables ?? []) {
    const text = t?.file && files.text(t.file.text, wantOf(outline, t.file.place), t.encoding?.value);
    if (!text) {
      incomplete = true;
      continue;
    }
    sources.push(text);
    const read = readReadings(text, optionsOf(t));
    reader.findings.push(...read.findings);
    incomplete ||= read.findings.length > 0;
    for (const r of read.value ?? []) {
      const parts = splitKey(r.key)!;
      const row = r.place.line;
      if (keyFields.map((f) => names.use(f, parts[f], () => placeInRow(text, row, parts[f], r.place))).every(Boolean)) readings.add(r);
      else incomplete = true;
    }
  }

  const logs = readLogs(outline, files, engine);
  sources.push(...logs.sources);
  incomplete ||= logs.incomplete;

  const texts = [...outline.texts];
  for (const want of outline.wants.filter((w) => w.as === 'text')) {
    const text = files.text(want.path, want);
    if (!text) continue;
    sources.push(text);
    const role = want.place === fields.script?.place ? 'script' : want.place === fields.description?.place ? 'description' : 'chapters';
    texts.push({ role, text: text.text, place: text.place(0, text.text.length) });
  }

  const theme = themeOf(outline, files, template, sources);
  const keys = [...new Set([...readings.all.map((r) => r.key), ...outline.quotes.map((q) => q.as)])];
  const refs = new References(keys, reader, incomplete);
  setAside(ctx, refs, readings.all);
  const stated = readStated(ctx, refs);
  const corrections = readCorrections(ctx, refs);
  const episode: Episode = {
    id: outline.id, place: reader.place(undefined, source.wholeLine(1)),
    ...outline.about,
    setups: names.map('setup') as Map<string, Setup>,
    settings: names.map('setting') as Map<string, Setting>,
    measures: names.map('measure') as Map<string, Measure>,
    workloads: names.map('workload'), parts: names.map('part'), phases: names.map('phase'),
    readings: readings.all, traces: logs.traces, stated, corrections,
    quotes: outline.quotes, pictures: outline.pictures, ...(theme && { theme }), ...(fields.motion && { motion: fields.motion }), ...(fields.sizes && { sizes: fields.sizes.map((s) => ({ size: s.value, place: s.place })) }), accept: readAccepted(ctx, refs), texts,
  };
  return { value: episode, findings: reader.findings.slice(before), sources };
}

/** Undefined where the record names none, or one that is unfit, which is a finding. */
function themeOf({ ctx, wants }: Outline, files: Given, template: TemplateReader, sources: Lines[]): Episode['theme'] {
  const named = ctx.fields.theme;
  if (!named) return undefined;
  if (!isThemeFile(named.text)) return shippedTheme(named.text as ShippedTheme, template);
  const text = files.text(named.text, wants.find((w) => w.place === named.place)!);
  if (!text) return undefined;
  sources.push(text);
  const { value, findings } = readTheme(text, template);
  ctx.reader.findings.push(...findings);
  return value;
}

function noTemplates(name: string): never {
  throw new Error(`no reader for ${name}`);
}

type TableDraft = NonNullable<NonNullable<Outline['ctx']['fields']['tables']>[number]>;

function optionsOf(t: TableDraft): TableOptions {
  return {
    delimiter: t.delimiter?.text === 'tab' ? '\t' : t.delimiter?.text ?? ',',
    ...(t.decimal && { decimalComma: t.decimal.value === ',' || t.decimal.value === 'comma' }),
  };
}

function wantOf(outline: Outline, place: Outline['wants'][number]['place']) {
  return outline.wants.find((w) => w.place === place)!;
}

/** The cell of a table's row that holds this very id. */
function placeInRow(source: Source, line: number, id: string, whole: Outline['wants'][number]['place']) {
  const m = new RegExp(`(?<=^|[,;\\t|"])${id.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?=$|[,;\\t|"])`).exec(source.line(line));
  return m ? { file: source.file, line, column: m.index + 1, endLine: line, endColumn: m.index + 1 + id.length } : whole;
}
