// Everything an episode becomes, as named outputs: pictures, narration, readings, facts, findings, and its page.
import { madeFrom, onSheet } from './contact.js';
import { type DrawnPicture, type PlannedPicture, planPictures, type Studio } from './draw.js';
import { template } from './files/index.js';
import { inOrder, Source } from './places/index.js';
import type { Examined } from './examine.js';
import type { MovingStudio } from './moving.js';
import type { Fact, Facts } from './facts/index.js';
import { withoutBuild } from './theme/index.js';
import type { SheetPicture } from './page/index.js';
import type { Sentence } from './narration/index.js';
import { asTold } from './told.js';

export type Put = (path: string, content: Uint8Array | string) => void;

/** Why outputs are a draft: something found counts as an error, or only because a draft was asked for. */
export type Draft = 'unsound' | 'asked';

/** What the index shows of an episode. */
export interface Card {
  id: string;
  title: string;
  date?: string;
  summary?: string;
  draft: boolean;
  unsound: boolean;
  readings: number;
  facts: number;
  warnings: number;
  /** Path of a picture from the output folder on, with its words. */
  picture?: { path: string; alt: string };
}

export async function render(examined: Examined, facts: Facts, stamp: Draft | undefined, studio: Studio, motion: MovingStudio, put: Put): Promise<Card> {
  const { id } = examined;
  const [draft, unsound] = [stamp !== undefined, stamp === 'unsound'];
  const [{ narrationText }, { cautionsFor }, { factRecord }, { readingsCsv, renderContactSheet, renderPage }] = await Promise.all([
    import('./narration/index.js'), import('./cautions/index.js'), import('./facts/index.js'), import('./page/index.js'),
  ]);
  const cautions = cautionsFor(facts);
  const sentences = await sentencesOf(facts);
  const findings = inOrder(examined.findings);
  const plan = await planPictures(facts);
  // What is wrong with a picture is for its author: it stands on the contact sheet and not on the page for viewers.
  const ofPictures = findings.filter((f) => plan.findings.some((g) => g.code === f.code && g.subject === f.subject && g.message === f.message));
  const drawing = Promise.all(asTold(plan.pictures, facts, examined.said).map(async (planned) => {
    const drawn = await studio.draw(planned, draft);
    putPicture(id, planned, drawn, facts, draft, factRecord, put);
    const moving = await motion.files(planned, draft);
    for (const { path, bytes } of moving) put(`${id}/pictures/${planned.stem}-${path}`, bytes);
    return { ...drawn, divides: planned.divides, listed: onSheet(planned, drawn, moving, facts) };
  }));
  const texts = async (): Promise<void> => {
    const records = (await storedFacts(facts, examined.claimed)).map((fact) => ({ ...factRecord(fact, facts), ...(draft && { draft: true }) }));
    put(`${id}/narration.md`, draftMark(stamp) + narrationText(facts, sentences, cautions));
    const script = await filledIn(facts);
    if (script !== undefined) put(`${id}/script.md`, draftMark(stamp) + script);
    put(`${id}/readings.csv`, draft ? markedCsv(readingsCsv(facts)) : readingsCsv(facts));
    put(`${id}/facts.json`, json(records));
    put(`${id}/findings.json`, json(findings.map((f) => ({ ...f, ...(draft && { draft: true }) }))));
  };
  // Both have ended before trouble with either is told: on a full disk both have some, and it is told once.
  for (const ended of await Promise.allSettled([texts(), drawing])) if (ended.status === 'rejected') throw ended.reason;
  const pictures = await drawing;
  put(`${id}/index.html`, renderPage({ facts, pictures: onPage(pictures), sentences: await sentencesOf(facts, 'digits'), cautions, findings: findings.filter((f) => !ofPictures.includes(f)), draft, unsound, template }));
  put(`${id}/pictures/index.html`, renderContactSheet({ title: facts.about.title || id, draft, pictures: listedOnce(pictures), findings: ofPictures, template }));
  const first = pictures[0];
  return {
    id, title: facts.about.title, draft, unsound, readings: examined.counts.readings, facts: examined.counts.facts,
    ...(facts.about.date && { date: facts.about.date }), ...(facts.about.summary && { summary: facts.about.summary }),
    warnings: findings.filter((f) => !f.accepted && f.severity !== 'note').length,
    ...(first && { picture: { path: `${id}/${pngPath(first, 0)}`, alt: first.picture.alt } }),
  };
}

/** What facts.json keeps: all that is shown, said, stated or claimed. */
export async function storedFacts(facts: Facts, claimed: readonly string[]): Promise<Fact[]> {
  const [{ listFacts }, sentences, plan] = await Promise.all([import('./facts/index.js'), sentencesOf(facts), planPictures(facts)]);
  return listFacts(facts, [...plan.pictures.flatMap((p) => p.sheets.flatMap((s) => s.prepared.facts)), ...sentences.flatMap((s) => s.facts), ...claimed]);
}

const told = { words: new WeakMap<Facts, Sentence[]>(), digits: new WeakMap<Facts, Sentence[]>() };

/** Spelled out to be read aloud, in digits to be looked at. */
async function sentencesOf(facts: Facts, form: 'words' | 'digits' = 'words'): Promise<Sentence[]> {
  const { narrate } = await import('./narration/index.js');
  const sentences = told[form].get(facts) ?? narrate(facts, { form });
  told[form].set(facts, sentences);
  return sentences;
}

/** The script as it is to be read, where it is a template whose numbers come from facts. */
async function filledIn(facts: Facts): Promise<string | undefined> {
  const script = facts.about.texts.find((t) => t.role === 'script');
  if (!script) return undefined;
  const source = new Source(script.place.file, script.text);
  const [{ isBound }, { renderBound }] = await Promise.all([import('./proof.js'), import('./narration/index.js')]);
  return isBound(source) ? renderBound(source, facts).value : undefined;
}

function draftMark(stamp: Draft | undefined): string {
  const why = { unsound: 'Made in spite of errors; not to be read out as it stands.', asked: 'Made to be looked at; nothing found counts as an error.' };
  return stamp ? `> **DRAFT.** ${why[stamp]}\n\n` : '';
}

function putPicture(id: string, planned: PlannedPicture, drawn: DrawnPicture, facts: Facts, draft: boolean, factRecord: (fact: never, facts: never) => object, put: Put): void {
  const { picture, stem } = drawn;
  drawn.pngs.forEach((png, i) => put(`${id}/${pngPath(drawn, i)}`, png.bytes));
  if (drawn.chart) put(`${id}/pictures/${stem}.svg`, withoutBuild(picture.outlined));
  const shown = picture.facts.map((fact) => facts.get(fact)).filter((f) => f !== undefined && 'id' in f);
  put(`${id}/pictures/${stem}.json`, json({
    name: picture.name, kind: picture.kind, title: picture.title, alt: picture.alt, why: planned.why, episode: id, from: madeFrom(planned), ...(draft && { draft: true }),
    facts: shown.map((f) => factRecord(f as never, facts as never)), ...(picture.table && { table: picture.table }),
  }));
}

function pngPath({ stem, pngs }: DrawnPicture, i: number): string {
  return `pictures/${stem}-${pngs[i]!.width}x${pngs[i]!.height}.png`;
}

/** Each picture once; the files of its other divisions stand beside its own. */
function onPage(pictures: readonly (DrawnPicture & { divides?: string })[]) {
  const files = (drawn: DrawnPicture): string[] => drawn.pngs.map((_, i) => pngPath(drawn, i));
  return pictures.filter((p) => p.divides === undefined).map((drawn) => ({
    ...drawn.picture, svg: withoutBuild(drawn.svg), data: `pictures/${drawn.stem}.json`,
    files: [...files(drawn), ...pictures.filter((p) => p.divides === drawn.picture.name).flatMap(files), ...(drawn.chart ? [`pictures/${drawn.stem}.svg`] : [])],
  }));
}

/** The same for the contact sheet. */
function listedOnce(pictures: readonly { divides?: string; picture: { name: string }; listed: SheetPicture }[]): SheetPicture[] {
  return pictures.filter((p) => p.divides === undefined).map(({ picture, listed }) => {
    const others = pictures.filter((p) => p.divides === picture.name).map((p) => p.listed);
    return { ...listed, stills: [listed, ...others].flatMap((l) => l.stills), files: [listed, ...others].flatMap((l) => l.files) };
  });
}

/** A column more, which the reader of tables passes over. */
function markedCsv(text: string): string {
  return text.trimEnd().split('\r\n').map((row, i) => `${row},${i === 0 ? 'note' : 'DRAFT'}\r\n`).join('');
}

function json(value: unknown): string {
  return `${JSON.stringify(value, null, 1)}\n`;
}
