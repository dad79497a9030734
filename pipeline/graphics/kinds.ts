// The catalogue: one line a graphic.
import { beforeAfter } from './before-after.js';
import { chapter } from './chapter.js';
import { conditions } from './conditions.js';
import { figure } from './figure.js';
import type { Graphic } from './graphic.js';
import { now } from './now.js';
import { ranking } from './ranking.js';

export const graphics: readonly Graphic[] = [chapter, conditions, figure, ranking, beforeAfter, now];

export const graphicKinds: readonly string[] = graphics.map((g) => g.kind);
