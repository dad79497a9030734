// The catalogue: one line a chart.
import type { Chart } from './chart.js';
import { bars } from './bars.js';
import { barsIdleLoad } from './bars-idle-load.js';
import { curve } from './curve.js';
import { differences } from './differences.js';
import { distribution } from './distribution.js';
import { dots } from './dots.js';
import { grid } from './grid.js';
import { ranked } from './ranked.js';
import { shareOfLimit } from './share-of-limit.js';
import { slope } from './slope.js';
import { trace } from './trace.js';
import { tradeoff } from './tradeoff.js';

export const charts: readonly Chart[] = [barsIdleLoad, bars, ranked, differences, dots, slope, grid, shareOfLimit, trace, distribution, tradeoff, curve];

export const chartKinds: readonly string[] = charts.map((c) => c.kind);
