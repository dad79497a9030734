// The comparison page of an episode: one file that needs no script, no font and no second request.
import { correctionsOf, type Facts, writeReadings } from '../facts/index.js';
import { corrected } from './corrected.js';
import { correctionRows } from './corrections.js';
import { curves, instruments, parameters, rooms, setups, system, type SmallTable, versions } from './conditions.js';
import { dataUri, readingRows, readingsJson } from './data.js';
import { derivations } from './derivations.js';
import { type PageFinding, acceptedFindings, ofTheRecord, openFindings } from './findings.js';
import { jsonLd } from './json-ld.js';
import { type PagePicture, pictureViews } from './pictures.js';
import { colourRules } from './palette.js';
import { dateShown } from './places-of.js';
import { commonWords, resultTables } from './results.js';
import { asideRows, quoteRows } from './set-apart.js';
import { fill, type TemplateReader } from './templates.js';

export interface EpisodePage {
  facts: Facts;
  pictures: readonly PagePicture[];
  sentences: readonly { section: string; text: string; facts: readonly string[] }[];
  cautions: readonly { text: string; because: string }[];
  findings: readonly PageFinding[];
  draft: boolean;
  /** Whether something found counts as an error; a draft may also have been asked for of what is sound. */
  unsound?: boolean;
  template: TemplateReader;
}

const files = [
  { name: 'readings.csv', href: 'readings.csv', type: 'text/csv', holds: 'every reading, ready to be read back in' },
  { name: 'facts.json', href: 'facts.json', type: 'application/json', holds: 'every figure with its formula and the readings it rests on' },
] as const;

/** Throws only on a bug: everything that a record may hold can be shown. */
export function renderPage({ facts, pictures, sentences, cautions, findings, draft, unsound = draft, template }: EpisodePage): string {
  const { about } = facts;
  const { tables, shown } = resultTables(facts);
  const { charts, graphics } = pictureViews(pictures);
  const ids = [...pictures.flatMap((p) => p.facts), ...sentences.flatMap((s) => s.facts), ...correctionsOf(facts).map((c) => c.fact.id)];
  const sections = [...new Set(sentences.map((s) => s.section))].map((name) => ({ name, sentences: sentences.filter((s) => s.section === name).map((s) => s.text) }));
  const conditions = [rooms(facts), corrected(facts, shown), instruments(facts), versions(facts)].filter((t) => t !== undefined);
  const tested = [setups(facts), parameters(facts), system(facts), ...curves(facts)].filter((t): t is SmallTable => t !== undefined);
  const readings = readingRows(facts);
  const known = ofTheRecord(facts, findings);
  const told = { aside: asideRows(facts), quotes: quoteRows(facts), accepted: acceptedFindings(known), open: openFindings(known) };
  return fill(template('page/episode.hbs'), {
    css: colourRules() + template('page/page.css'),
    title: about.title || about.id,
    date: about.date ?? '',
    dateShown: about.date ? dateShown(about.date) : '',
    summary: about.summary ?? '',
    draft, unsound,
    disclosures: about.disclosures.map((d) => d.text),
    corrections: correctionRows(facts),
    cautions: cautions.map(cautionView),
    tables,
    common: commonWords(facts),
    charts, graphics,
    hasPictures: charts.length + graphics.length > 0,
    method: about.method.map((m) => m.text),
    conditions, tested,
    hasTested: tested.length > 0,
    ...told,
    nothing: Object.values(told).every((list) => list.length === 0),
    sections,
    derivations: derivations(facts, shown, ids),
    readings,
    count: readings.length,
    files,
    csv: dataUri('text/csv', writeReadings(facts)),
    json: dataUri('application/json', readingsJson(facts)),
    fileName: about.id || 'episode',
    jsonLd: jsonLd(facts, files),
  }, { small: template('page/small-table.hbs') });
}

/** The first sentence stands out; the rest says what to do about it. */
function cautionView({ text, because }: { text: string; because: string }): { lead: string; rest: string; because: string } {
  const m = /^(.+?[.!?])\s+(.+)$/s.exec(text);
  return { lead: m ? m[1]! : text, rest: m ? m[2]! : '', because };
}
