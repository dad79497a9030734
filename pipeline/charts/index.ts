// Charts: a request and the facts in, a picture that is ready to be drawn out.
export { type Chart, type ChartRequest } from './chart.js';
export { chartKinds, charts } from './kinds.js';
export { inParts, partsOf, planCharts, rowsOf, splitRows, wholeOf } from './plan.js';
export { prepareChart } from './prepare.js';
export { drawSpec } from './draw.js';
export { refusals } from './spec.js';
