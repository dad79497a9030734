// The catalogue: one line a graphic.
import type { Facts, PictureRequest } from '../facts/index.js';
import { beforeAfter } from './before-after.js';
import { chapter } from './chapter.js';
import { conditions } from './conditions.js';
import { correction } from './correction.js';
import { endCard } from './end-card.js';
import { figure } from './figure.js';
import { gauge } from './gauge.js';
import type { Graphic } from './graphic.js';
import { method } from './method.js';
import { nameStrip } from './name-strip.js';
import { now } from './now.js';
import { pair } from './pair.js';
import { parts } from './parts.js';
import { ranking } from './ranking.js';
import { settings } from './settings.js';
import { span } from './span.js';
import { summary } from './summary.js';
import { thumbnail } from './thumbnail.js';

export const graphics: readonly Graphic[] = [
  chapter, nameStrip, now, conditions, method, settings, parts, figure, beforeAfter, pair, span, gauge, ranking, summary, correction, thumbnail, endCard,
];

export const graphicKinds: readonly string[] = graphics.map((g) => g.kind);

/** How many rows a request would show; 0 of a kind that is never split. */
export function rowsOf(request: PictureRequest, facts: Facts): number {
  return graphics.find((g) => g.kind === request.kind)?.rows?.(request, facts) ?? 0;
}
