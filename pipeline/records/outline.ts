// The first of two steps: the YAML alone, with all that can be told without the files that it names.
import type { LogLayout } from '../logs/index.js';
import type { Outcome, Place, Source } from '../places/index.js';
import { readAbout } from './about-section.js';
import { type Context, Readings } from './context.js';
import { readDocument } from './document.js';
import type { Episode, EpisodeText } from './episode.js';
import { type FilePattern, readPattern } from './file-patterns.js';
import { readLayouts } from './layouts.js';
import { Names } from './names.js';
import { broughtConstants, declareNames } from './named-sections.js';
import { phased, readBlocks } from './reading-blocks.js';
import { recordShape } from './record-shape.js';
import { readPictures, readQuotes } from './said-section.js';
import type { Written } from './shape.js';
import { ambiguousOnce } from './tables.js';

/** A file that the record names. With `pattern`, `path` has placeholders, and every file that fits is wanted. */
export interface Want {
  /** Relative to the episode's folder, with forward slashes, never leaving it; but a theme may stand beside the episodes (`../NAME`). */
  path: string;
  as: 'table' | 'log' | 'text' | 'theme';
  place: Place;
  pattern?: FilePattern;
}

/** What `assemble` goes on from, once. */
export interface Outline {
  id: string;
  source: Source;
  wants: Want[];
  ctx: Context;
  readings: Readings;
  layouts: Map<string, LogLayout>;
  texts: EpisodeText[];
  about: ReturnType<typeof readAbout>;
  quotes: Episode['quotes'];
  pictures: Episode['pictures'];
}

/** Undefined only where the YAML is too broken to read on; every error found is among the findings. */
export function outline(source: Source, id: string): Outcome<Outline> {
  const document = readDocument(source);
  if (!document.value) return { value: undefined, findings: document.findings };
  const { root, reader } = document.value;
  const read = recordShape.read(root, reader, source.place(0));
  if (!read) return { value: undefined, findings: [...reader.findings] };
  const { fields, keys } = read;
  const names = new Names(reader.findings);
  const ctx: Context = { reader, names, fields, keys };
  const readings = new Readings(reader.findings);
  declareNames(ctx);
  broughtConstants(ctx, readings);
  readBlocks(ctx, fields.constants ?? [], true, readings);
  if (fields.room && keys.room) for (const r of phased(ctx, { key: { text: 'temperature/room', place: keys.room }, value: fields.room }, {}, '', false)) readings.add(r);
  readBlocks(ctx, fields.readings ?? [], false, readings);
  const texts = inlineTexts(ctx);
  const made: Outline = {
    id, source, ctx, readings, texts,
    layouts: readLayouts(ctx, fields.layouts ?? []),
    wants: wantsOf(ctx),
    about: readAbout(ctx),
    quotes: readQuotes(ctx),
    pictures: readPictures(ctx),
  };
  if (!fields.readings && !fields.tables && !fields.logs && !fields.quotes && !keys.readings && !keys.tables && !keys.logs && !keys.quotes) {
    reader.fail(source.wholeLine(reader.place(root).line), 'record-bare', 'the record has no "readings", "tables", "logs" or "quotes": there is nothing to compute from', { severity: 'warning', subject: 'readings' });
  }
  const once = ambiguousOnce(reader.findings);
  if (once !== reader.findings) reader.findings.splice(0, reader.findings.length, ...once);
  return { value: made, findings: [...reader.findings] };
}

const textFile = /^[^\s/]+(\/[^\s/]+)*\.(md|markdown|txt|vtt|srt)$/i;

function wantsOf({ reader, names, fields: f }: Context): Want[] {
  const wants: Want[] = [];
  const want = (w: Written, as: Want['as'], pattern?: FilePattern) => wants.push({ path: w.text, as, place: w.place, ...(pattern && { pattern }) });
  for (const t of [...(f.tables ?? []), ...(f.names ?? [])]) if (t?.file) want(t.file, 'table');
  for (const { fields: log } of f.logs ?? []) {
    for (const kind of ['setup', 'setting', 'workload'] as const) {
      const id = log.for?.fields[kind];
      if (id) names.use(kind, id.text, id.place);
    }
    if (!log.files) continue;
    const pattern = readPattern(log.files.text);
    if (pattern && 'why' in pattern) reader.fail(log.files.place, 'record-form', pattern.why, { said: log.files.text });
    else want(log.files, 'log', pattern);
    if (pattern && 'names' in pattern) {
      for (const name of pattern.names) {
        const twice = name === 'run' ? log.run : log.for?.fields[name];
        if (twice) reader.fail(twice.place, 'record-form', `the ${name} is said by {${name}} in the file names already`, { said: twice.text });
      }
    }
  }
  if (f.script) want(f.script, 'text');
  if (f.theme && isThemeFile(f.theme.text)) want(f.theme, 'theme');
  for (const w of [f.description, f.chapters]) if (w && textFile.test(w.text)) want(w, 'text');
  return wants;
}

/** Else the name of a shipped one. */
export function isThemeFile(name: string): boolean {
  return /\.ya?ml$/i.test(name);
}

function inlineTexts({ reader, fields: f }: Context): EpisodeText[] {
  const texts: EpisodeText[] = [];
  for (const role of ['title', 'thumbnail', 'description', 'chapters'] as const) {
    const w = f[role];
    if (!w || ((role === 'description' || role === 'chapters') && textFile.test(w.text))) continue;
    texts.push({ role, text: w.text, place: w.verbatim === undefined ? w.place : reader.source.place(w.verbatim, w.verbatim + w.text.length) });
  }
  return texts;
}
