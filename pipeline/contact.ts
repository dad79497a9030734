// What the contact sheet is told of each picture.
import type { DrawnPicture, PlannedPicture } from './draw.js';
import { hashOf } from './files/index.js';
import { type Facts, isFact } from './facts/index.js';
import type { Made } from './moving-kept.js';
import type { SheetPicture } from './page/index.js';

/** A short hash of all that determines how a picture looks: another one says that a picture kept elsewhere is stale. */
export function madeFrom({ sheets }: PlannedPicture): string {
  return hashOf(sheets.map((s) => s.prepared.inputs)).slice(0, 16);
}

export function onSheet(planned: PlannedPicture, { stem, chart, picture, pngs }: DrawnPicture, moving: readonly Made[], facts: Facts): SheetPicture {
  const still = ({ width, height }: { width: number; height: number }): string => `${stem}-${width}x${height}.png`;
  const animation = moving.find((m) => m.format === 'webp');
  const size = /^(\d+)x(\d+)/.exec(animation?.path ?? '');
  // A sequence is named once, by its first picture.
  const films = moving.filter((m) => m.format !== 'png' || m.path.endsWith('/0001.png')).map((m) => `${stem}-${m.path}`);
  return {
    stem, kind: picture.kind, title: picture.title, alt: picture.alt, why: planned.why, from: madeFrom(planned),
    facts: picture.facts.map((id) => facts.get(id)).filter(isFact).map(({ id, shown }) => ({ id, shown })),
    stills: pngs.map(({ width, height }) => ({ name: still({ width, height }), width, height })),
    ...(animation && size && planned.moves && { moving: { name: `${stem}-${animation.path}`, width: Number(size[1]), height: Number(size[2]), build: planned.moves.build } }),
    files: [...pngs.map(still), ...(chart ? [`${stem}.svg`] : []), ...films, `${stem}.json`],
  };
}
