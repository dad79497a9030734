// From a request to a graphic that is ready to be drawn: all that can be wrong with it is found here, without drawing.
import { type Facts, placeOfName } from '../facts/index.js';
import type { Finding, Outcome } from '../places/index.js';
import { brief, canonical, inkLeft, measure, outline, type Prepared, renumberIds, sheet, type Stage, unshown } from '../theme/index.js';
import { Composer, filling } from './compose.js';
import type { GraphicRequest } from './graphic.js';
import { graphics } from './kinds.js';
import { accepts } from './takes.js';
import { fill } from './template.js';

export function prepareGraphic(request: GraphicRequest, facts: Facts, stage: Stage, templates: (name: string) => string): Outcome<Prepared> {
  const findings: Finding[] = [];
  const complain = (code: string, message: string, subject: string = request.name): undefined => {
    const named = code === 'label-too-long' || code === 'missing-glyph' ? placeOfName(facts.about, subject) : undefined;
    if (!findings.some((f) => f.code === code && f.message === message)) findings.push({ code, severity: 'error', place: named ?? request.place, message, subject });
  };
  const graphic = graphics.find((g) => g.kind === request.kind);
  if (!graphic) {
    complain('picture-kind', `there is no graphic "${request.kind}"`, request.kind);
    return { value: undefined, findings };
  }
  const composer = new Composer(stage, complain);
  const { safe } = stage;
  if (!accepts(graphic, request, facts, complain)) return { value: undefined, findings };
  const layout = graphic.compose(request, facts, composer);
  if (!layout) return { value: undefined, findings };
  for (const m of composer.misfits) complain(m.code, m.message, m.text);
  for (const line of layout.lines) {
    const missing = unshown(line.text);
    if (missing) complain(missing.code, missing.message, missing.text);
    const width = measure(line.text, line.style);
    const left = line.anchor === 'end' ? line.x - width : line.anchor === 'middle' ? line.x - width / 2 : line.x;
    const ink = line.anchor ? 0 : inkLeft(line.text, line.style);
    if (composer.misfits.length === 0 && (left + ink < safe.x - 12 || left + width > safe.x + safe.width || line.y > safe.y + safe.height || line.y - line.style.size < safe.y - 20)) {
      complain('label-too-long', `"${brief(line.text)}" does not fit into picture "${request.name}"; shorten what it shows`, line.text);
    }
  }
  if (findings.some((f) => f.severity === 'error')) return { value: undefined, findings };
  const { title, alt, table, model } = layout;
  const prepared: Prepared = {
    name: request.name, kind: request.kind, title, alt, ...(table && { table }), facts: [...new Set(layout.facts)], transparent: !stage.opaque,
    inputs: canonical({ kind: request.kind, name: request.name, stage: stage.id, theme: stage.theme, title, alt, panel: layout.panel, model }),
    async draw({ draft } = {}) {
      const filled = await fill(request.kind, model, stage.colours, templates);
      const inside = stage.opaque ? `<g transform="${filling(stage, layout.panel)}">${filled}</g>` : filled;
      const svg = renumberIds(sheet(stage, { title, alt, inside, ...(!stage.opaque && { panel: layout.panel }), draft }), request.name);
      return { svg, outlined: outline(svg) };
    },
  };
  return { value: prepared, findings };
}
