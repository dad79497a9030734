// The catalogue: one line a chart.
import type { Chart } from './chart.js';
import { barsIdleLoad } from './bars-idle-load.js';

export const charts: readonly Chart[] = [barsIdleLoad];

export const chartKinds: readonly string[] = charts.map((c) => c.kind);
