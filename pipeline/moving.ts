// Pictures that move: which ones, in which sizes and formats, whether that can be done here, and their files, made again only where something shown has changed.
import type { PlannedPicture } from './draw.js';
import { type Cache, findTool, hashOf, runTool } from './files/index.js';
import type { Facts, PictureRequest } from './facts/index.js';
import type { Made } from './moving-kept.js';
import { kept, keep } from './moving-kept.js';
import { type Finding, nearest, type Place } from './places/index.js';
import { type Build, isMovie, type Motion, type MotionFormat, type MovieFormat, ownFormats, type Size } from './theme/index.js';

export interface Moves {
  build: Build;
  formats: MotionFormat[];
  sizes: Size[];
  motion: Motion;
}

/** How the pictures of the plan move, by name; what cannot be done is a finding where it was asked for. */
export async function planMoves(facts: Facts, pictures: readonly { request: PictureRequest; picture: Pick<PlannedPicture, 'sheets'> }[], motion: Motion): Promise<{ moves: Map<string, Moves>; findings: Finding[] }> {
  const asked = facts.about.motion;
  const moves = new Map<string, Moves>();
  const findings: Finding[] = [];
  const complain = (code: string, severity: Finding['severity'], place: Place, message: string, subject: string, suggest?: string): void => {
    if (!findings.some((f) => f.message === message)) findings.push({ code, severity, place, message, subject, ...(suggest && { suggest, said: subject }) });
  };
  const own = pictures.filter(({ request }) => request.motion !== undefined && request.motion !== 'none');
  if (!asked && own.length === 0) return { moves, findings };
  const names = pictures.map((p) => p.picture.sheets[0]!.prepared.name);
  for (const { text, place } of asked?.only ?? []) {
    if (names.includes(text)) continue;
    const near = nearest(text, names);
    complain('motion-picture', 'error', place, `there is no picture "${text}" to move${near ? `; did you mean "${near}"?` : `; there are ${names.join(', ')}`}`, text, near);
  }
  const ffmpeg = findTool('ffmpeg');
  const formats: MotionFormat[] = asked?.formats.length ? [...new Set(asked.formats.map((f) => f.value))] : [...ownFormats];
  const doable = formats.filter((f) => !isMovie(f) || ffmpeg !== undefined);
  for (const { value, place } of asked?.formats ?? []) {
    if (isMovie(value) && ffmpeg === undefined) complain('motion-tool', 'note', place, `${value} files are left out: they are made by ffmpeg, and there is none on the search path; webp and png need nothing`, value);
  }
  const { mostFrames, lengthOf } = await import('./motion/index.js');
  for (const [i, { request, picture }] of pictures.entries()) {
    const name = names[i]!;
    const build = request.motion ?? (!asked?.only || asked.only.some((o) => o.text === name) ? asked?.build : undefined);
    if (build === undefined || build === 'none') continue;
    const place = request.motion ? request.place : asked!.place;
    const length = lengthOf(build, motion);
    if (length > mostFrames) {
      complain('motion-long', 'error', place, `"${build}" would take ${length} frames by the theme, and ${mostFrames} are the most; let it come, stand and go in fewer`, name);
      continue;
    }
    const drawn = picture.sheets.flatMap((s) => s.sizes);
    const sizes = asked?.sizes ? drawn.filter((s) => asked.sizes!.some((a) => a.size === `${s.width}x${s.height}`)) : drawn.slice(0, 1);
    for (const { size, place: at } of asked?.sizes ?? []) {
      if (!drawn.some((s) => `${s.width}x${s.height}` === size)) complain('motion-size', 'error', at, `nothing can move at ${size}, because no picture is made in that size; the record asks for ${drawn.map((s) => `${s.width}x${s.height}`).join(', ')}`, size);
    }
    if (doable.length > 0) moves.set(name, { build, formats: doable, sizes, motion });
  }
  return { moves, findings };
}

/** The files of a moving picture, by what follows `NN-NAME-` in their path. */
export class MovingStudio {
  made = 0;
  reused = 0;
  readonly #cache: Cache;
  readonly #code: string;
  #last: Promise<unknown> = Promise.resolve();

  constructor(cache: Cache, code: string) {
    this.#cache = cache;
    this.#code = code;
  }

  /** One at a time, whoever asks: each keeps the machine busy, and holds its frames. */
  async files({ sheets, moves }: PlannedPicture, draft: boolean): Promise<Made[]> {
    const made: Made[] = [];
    for (const { prepared, sizes } of moves ? sheets : []) {
      for (const { width, height } of sizes.filter((s) => moves!.sizes.some((m) => m.width === s.width && m.height === s.height))) {
        const key = hashOf(this.#code, prepared.inputs, draft, width, height, moves!.build, moves!.motion);
        const known = kept(this.#cache, key, moves!.formats, width, height);
        if (known) {
          this.reused++;
          made.push(...known);
          continue;
        }
        const fresh = this.#last.then(() => this.#make(prepared, draft, width, height, moves!), () => this.#make(prepared, draft, width, height, moves!));
        this.#last = fresh;
        const files = await fresh;
        this.made++;
        keep(this.#cache, key, files);
        made.push(...files);
      }
    }
    return made;
  }

  async #make(prepared: PlannedPicture['sheets'][number]['prepared'], draft: boolean, width: number, height: number, { build, formats, motion }: Moves): Promise<Made[]> {
    const { makeFiles, movieArguments, sceneOf, timeline } = await import('./motion/index.js');
    const { outlined } = await prepared.draw({ draft });
    const ffmpeg = findTool('ffmpeg');
    const films = formats.filter(isMovie).flatMap((format: MovieFormat) => (ffmpeg === undefined ? [] : [{ format, run: runTool(ffmpeg, (out) => movieArguments(format, width, height, motion.rate, out), format) }]));
    const stem = `${width}x${height}`;
    try {
      const { webp, pngs } = await makeFiles({ scene: sceneOf(outlined), frames: timeline(build, motion), width, height }, motion.rate, {
        webp: formats.includes('webp'), png: formats.includes('png'), films: films.map((f) => (frame: Uint8Array) => f.run.feed(frame)),
      });
      const finished = await Promise.all(films.map(async ({ format, run }): Promise<Made> => ({ format, path: `${stem}.${format}`, bytes: await run.finish() })));
      return [
        ...(webp ? [{ format: 'webp' as const, path: `${stem}.webp`, bytes: webp }] : []), ...finished,
        ...(pngs ?? []).map((bytes, i): Made => ({ format: 'png', path: `${stem}/${String(i + 1).padStart(4, '0')}.png`, bytes })),
      ];
    } catch (thrown) {
      for (const { run } of films) run.stop();
      throw thrown;
    }
  }
}
