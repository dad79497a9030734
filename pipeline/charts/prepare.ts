// From a request to a picture that is ready to be drawn: all that can be wrong with it is found here, without drawing.
import { type Facts, placeOfName } from '../facts/index.js';
import type { Finding, Outcome } from '../places/index.js';
import { canonical, frame, mostRows, outline, type Prepared, renumberIds, sheet, type Stage, unshown } from '../theme/index.js';
import type { ChartRequest, Workbench } from './chart.js';
import { drawSpec } from './draw.js';
import { charts } from './kinds.js';

export function prepareChart(request: ChartRequest, facts: Facts, stage: Stage): Outcome<Prepared> {
  const findings: Finding[] = [];
  const complain = (code: string, message: string, subject: string = request.name): undefined => {
    const named = code === 'label-too-long' || code === 'missing-glyph' ? placeOfName(facts.about, subject) : undefined;
    if (!findings.some((f) => f.code === code && f.message === message)) findings.push({ code, severity: 'error', place: named ?? request.place, message, subject });
  };
  const work: Workbench = { complain, stage, frame: (heading) => frame(stage, { ...heading, title: heading.title + partOf(request) }) };
  const chart = charts.find((c) => c.kind === request.kind);
  if (!chart) {
    complain('picture-kind', `there is no chart "${request.kind}"`, request.kind);
    return { value: undefined, findings };
  }
  const rows = request.slice ? request.slice.to - request.slice.from : chart.rows(request, facts);
  if (rows > mostRows) complain('too-many-rows', `picture "${request.name}" would show ${rows} rows, and ${mostRows} are the most that can be read on a phone; name fewer setups or settings`);
  const sketch = chart.sketch(request, facts, work);
  if (!sketch) return { value: undefined, findings };
  sketch.heading.title += partOf(request);
  const around = frame(stage, sketch.heading);
  for (const m of around.misfits) complain(m.code, m.message, m.text);
  for (const m of new Set(sketch.labels.map(unshown))) if (m) complain(m.code, m.message, m.text);
  if (findings.some((f) => f.severity === 'error')) return { value: undefined, findings };
  const { heading, alt, table, spec } = sketch;
  const prepared: Prepared = {
    name: request.name, kind: request.kind, title: heading.title, alt, table, facts: [...new Set(sketch.facts)], transparent: !stage.opaque,
    inputs: canonical({ kind: request.kind, name: request.name, stage: stage.id, theme: stage.theme, heading, alt, spec }),
    async draw({ draft } = {}) {
      const inside = around.svg + (await drawSpec(spec));
      const [page, pixels] = [true, stage.opaque].map((opaque) => renumberIds(sheet(stage, { title: heading.title, alt, inside, opaque, draft }), request.name)) as [string, string];
      return { svg: page, outlined: outline(pixels) };
    },
  };
  return { value: prepared, findings };
}

/** " (1 of 2)", where a request has more rows than one picture shows. */
function partOf({ slice }: ChartRequest): string {
  return slice ? ` (${slice.part} of ${slice.parts})` : '';
}
