// The pictures of an episode: which ones, whether they can be drawn, and their pixels, drawn again only where something shown has changed.
import { type Cache, hashOf, template } from './files/index.js';
import { type Finding, nearest } from './places/index.js';
import type { Facts, PictureRequest } from './facts/index.js';
import { type Moves, planMoves } from './moving.js';
import { Layouts, type Staged } from './sheets.js';
import { type Picture, pictureSizes, type Prepared, type Size, type StageId, stageOf, type Theme } from './theme/index.js';

/** Pictures drawn at a time: rasterising runs beside the program, so that more than one keeps two cores busy. */
const inFlight = 4;

export interface PlannedPicture {
  /** `NN-NAME`, the number in the order of the episode. */
  stem: string;
  /** Charts are also kept as SVG. */
  chart: boolean;
  /** One for each stage that it is laid out for, and the sizes that are drawn of it; never empty. */
  sheets: Sheet[];
  /** Why it is drawn, in words. */
  why: string;
  /** Name of the picture that this one shows in other parts, for a stage with less room. */
  divides?: string;
  /** How it moves, where it does. */
  moves?: Moves;
}

export interface Sheet {
  stage: StageId;
  prepared: Prepared;
  sizes: Size[];
}

export interface Plan {
  pictures: PlannedPicture[];
  findings: Finding[];
}

export interface DrawnPicture {
  stem: string;
  chart: boolean;
  /** Of the first stage. */
  picture: Picture;
  /** For the page. */
  svg: string;
  pngs: (Size & { bytes: Uint8Array })[];
}

const plans = new WeakMap<Facts, Promise<Plan>>();

/** The plan of an episode, made once. */
export function planPictures(facts: Facts): Promise<Plan> {
  let plan = plans.get(facts);
  if (!plan) plans.set(facts, (plan = makePlan(facts)));
  return plan;
}

/** What is wrong with a text and not with one picture: said once, of the first picture that shows it. */
const ofText: ReadonlySet<string> = new Set(['label-too-long', 'missing-glyph']);

/** What the record asks for, or, where it asks for nothing, what suits it. All that can be wrong with a picture is found here. */
async function makePlan(facts: Facts): Promise<Plan> {
  const [charts, graphics, { shippedTheme }] = await Promise.all([import('./charts/index.js'), import('./graphics/index.js'), import('./records/index.js')]);
  const theme = facts.about.theme ?? shippedTheme('dark', template);
  const stages = stagesOf(facts, theme);
  const [first] = stages;
  const asked = facts.about.pictures;
  const proposed = asked.length > 0 ? asked.map((r) => ({ ...r, why: 'the record asks for it' })) : [...graphics.planGraphics(facts), ...charts.planCharts(facts, first!.stage)];
  const layouts = new Layouts(facts, stages, charts, graphics);
  const plan: Plan = { pictures: [], findings: [] };
  const made: { request: PictureRequest; picture: PlannedPicture }[] = [];
  for (const request of proposed.flatMap((r) => charts.wholeOf(r) ?? [])) {
    const chart = layouts.isChart(request.kind);
    if (!chart && !graphics.graphicKinds.includes(request.kind)) {
      plan.findings.push(unknownKind(request, [...charts.chartKinds, ...graphics.graphicKinds]));
      continue;
    }
    const { parts, findings: found } = layouts.of(request);
    // What was planned without being asked for and has nothing to show is simply left out.
    if (parts.length === 0 && asked.length === 0 && found.every((f) => f.code === 'picture-empty')) continue;
    plan.findings.push(...found.filter((f) => !ofText.has(f.code) || !plan.findings.some((g) => g.code === f.code && g.subject === f.subject)));
    for (const { request: part, sheets, divides } of parts) made.push({ request: part, picture: { stem: '', chart, sheets, why: request.why, ...(divides !== undefined && { divides }) } });
  }
  const { moves, findings } = await planMoves(facts, made, theme.motion);
  plan.findings.push(...findings);
  plan.pictures = numbered(made.map(({ picture }) => ({ ...picture, ...(moves.has(picture.sheets[0]!.prepared.name) && { moves: moves.get(picture.sheets[0]!.prepared.name)! }) })));
  return plan;
}

/** With their stems, in this order; other divisions of a picture stand behind it and share its number. */
export function numbered(pictures: readonly PlannedPicture[]): PlannedPicture[] {
  const main = pictures.filter((p) => p.divides === undefined);
  const digits = Math.max(2, String(main.length).length);
  const nameOf = (p: PlannedPicture): string => p.sheets[0]!.prepared.name;
  return main.flatMap((p, i) => [p, ...pictures.filter((o) => o.divides === nameOf(p))].map((o) => ({ ...o, stem: `${String(i + 1).padStart(digits, '0')}-${nameOf(o)}` })));
}

/** The stages of the sizes that the record asks for, in the order of the catalogue. */
function stagesOf(facts: Facts, theme: Theme): Staged[] {
  const asked = facts.about.sizes?.map((s) => s.size);
  const wanted = pictureSizes.filter((s) => !asked?.length || asked.includes(`${s.width}x${s.height}`));
  return [...new Set(wanted.map((s) => s.stage))].map((id) => ({ stage: stageOf(theme, id), sizes: wanted.filter((s) => s.stage === id).map(({ width, height }) => ({ width, height })) }));
}

interface Pixels {
  svg: string;
  outlined: string;
  pngs: Uint8Array[];
  /** Taken from the cache. */
  kept: boolean;
}

/** Bytes of pictures drawn ahead that are held until somebody asks for them. */
const mostAhead = 64 * 1024 * 1024;

/** Draws at most four pictures at a time, whoever asks, and takes from the cache what was drawn before. */
export class Studio {
  /** Pictures, whatever their sizes: drawn where any of them had to be. */
  drawn = 0;
  reused = 0;
  readonly #counted = new WeakSet<Pixels>();
  readonly #cache: Cache;
  readonly #code: string;
  readonly #told: (stem: string) => void;
  readonly #drawing = new Map<string, Promise<Pixels>>();
  readonly #waiting: (() => void)[] = [];
  #free = inFlight;
  readonly #ahead = new Set<string>();
  #held = 0;
  #stopped = false;

  /** `told` hears of every picture that is done. */
  constructor(cache: Cache, code: string, told: (stem: string) => void) {
    this.#cache = cache;
    this.#code = code;
    this.#told = told;
  }

  async draw({ stem, sheets, chart }: PlannedPicture, draft: boolean): Promise<DrawnPicture> {
    const drawn = await Promise.all(sheets.map((sheet) => this.#pixels(sheet, draft)));
    if (drawn.some((p) => !p.kept && !this.#counted.has(p))) this.drawn++;
    else this.reused++;
    for (const p of drawn) this.#counted.add(p);
    this.#told(stem);
    const [{ prepared }] = sheets as [Sheet];
    const { name, kind, title, alt, facts, table, transparent } = prepared;
    const { svg, outlined } = drawn[0]!;
    const page = drawn[sheets.findIndex((s) => s.stage === 'page')] ?? drawn[0]!;
    return { stem, chart, picture: { name, kind, title, alt, facts, table, transparent, svg, outlined }, svg: page.svg, pngs: sheets.flatMap(({ sizes }, i) => sizes.map((size, j) => ({ ...size, bytes: drawn[i]!.pngs[j]! }))) };
  }

  /** Begins with pictures that will most likely be asked for, while there is other work to do. */
  ahead(plan: Plan, draft: boolean): void {
    for (const sheet of plan.pictures.flatMap((p) => p.sheets)) {
      if (this.#held > mostAhead) return;
      if (this.#drawing.has(this.#keyOf(sheet, draft))) continue;
      // Whoever asks for the picture meets the error again.
      this.#pixels(sheet, draft, true).catch(() => undefined);
    }
  }

  /** Nothing more will be asked for: what is not yet begun is not drawn. */
  stop(): void {
    this.#stopped = true;
    for (const go of this.#waiting.splice(0)) go();
  }

  #keyOf({ prepared, sizes }: Sheet, draft: boolean): string {
    return hashOf(this.#code, prepared.inputs, sizes, draft);
  }

  /** Of two pictures that are alike to the last, one waits for the other. */
  #pixels(sheet: Sheet, draft: boolean, hold = false): Promise<Pixels> {
    const key = this.#keyOf(sheet, draft);
    const known = this.#drawing.get(key);
    const pixels = known ?? this.#begin(key, sheet, draft);
    if (!known) this.#drawing.set(key, pixels);
    const size = ({ pngs }: Pixels): number => pngs.reduce((sum, p) => sum + p.length, 0);
    const forget = (): void => void this.#drawing.delete(key);
    if (hold) {
      this.#ahead.add(key);
      pixels.then((p) => (this.#held += size(p)), forget);
    } else {
      const taken = this.#ahead.delete(key);
      pixels.then((p) => {
        forget();
        if (taken) this.#held -= size(p);
      }, forget);
    }
    return pixels;
  }

  async #begin(key: string, sheet: Sheet, draft: boolean): Promise<Pixels> {
    await this.#enter();
    try {
      if (this.#stopped) throw new Error('drawing was stopped');
      return this.#kept(key, sheet.sizes) ?? (await this.#fresh(key, sheet, draft));
    } finally {
      this.#leave();
    }
  }

  #kept(key: string, sizes: readonly Size[]): Pixels | undefined {
    const [svg, outlined] = [this.#cache.get('svg', key), this.#cache.get('outlined', key)];
    const pngs = sizes.map(({ width }) => this.#cache.get(`png-${width}`, key));
    return svg && outlined && pngs.every((p) => p !== undefined) ? { svg: svg.toString('utf8'), outlined: outlined.toString('utf8'), pngs, kept: true } : undefined;
  }

  async #fresh(key: string, { prepared, sizes }: Sheet, draft: boolean): Promise<Pixels> {
    const { rasterise } = await import('./graphics/index.js');
    const { svg, outlined } = await prepared.draw({ draft });
    const pngs = await Promise.all(sizes.map(({ width, height }) => rasterise(outlined, width, height)));
    this.#cache.put('svg', key, Buffer.from(svg));
    this.#cache.put('outlined', key, Buffer.from(outlined));
    for (const [i, { width }] of sizes.entries()) this.#cache.put(`png-${width}`, key, pngs[i]!);
    return { svg, outlined, pngs, kept: false };
  }

  async #enter(): Promise<void> {
    if (this.#free > 0) this.#free--;
    else await new Promise<void>((go) => this.#waiting.push(go));
  }

  #leave(): void {
    const next = this.#waiting.shift();
    if (next) next();
    else this.#free++;
  }
}

function unknownKind(request: PictureRequest, known: readonly string[]): Finding {
  const near = nearest(request.kind, known);
  return {
    code: 'picture-kind', severity: 'error', place: request.place, subject: request.name, said: request.kind,
    message: `there is no chart or graphic "${request.kind}"${near ? `; did you mean "${near}"?` : `; there are ${known.join(', ')}`}`, ...(near && { suggest: near }),
  };
}
