// The base of every spec, and the refusal of what a spec must not hold: it can read nothing, fetch nothing and wait for nothing.
import { family, type Rect, type Stage } from '../theme/index.js';

export type Spec = Record<string, unknown>;

export const mostDataRows = 20_000;

/** Vega centres a text by 0.3 of its size; half an Inter capital is 0.36. */
export const middleShift = 3;

/** A view of exactly the body's size at the body's place. */
export function baseSpec(stage: Stage, body: Rect): Spec {
  const left = Math.round(body.x);
  const top = Math.round(body.y);
  const width = Math.round(body.width);
  const height = Math.round(body.height);
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    width, height, autosize: 'none',
    padding: { left, top, right: stage.width - left - width, bottom: stage.height - top - height },
    background: null,
    config: {
      aria: false,
      font: family,
      view: { stroke: null },
      text: { font: family, fontSize: stage.type.value.size, fontWeight: stage.type.value.weight, fill: stage.colours.text, align: 'left', baseline: 'middle', dy: middleShift },
    },
  };
}

/** Reasons why a spec is refused, each naming the path; empty for a spec that may be drawn. */
export function refusals(spec: unknown, path = 'spec'): string[] {
  if (Array.isArray(spec)) {
    const found = spec.length > mostDataRows ? [`${path} has ${spec.length} rows, and ${mostDataRows} are the most`] : [];
    return [...found, ...(path.endsWith('.values') ? [] : spec.flatMap((v, i) => refusals(v, `${path}[${i}]`)))];
  }
  if (typeof spec === 'string') return expressionRefusal(spec, path);
  if (!spec || typeof spec !== 'object') return [];
  return Object.entries(spec).flatMap(([key, value]) => {
    if (key === '$schema') return [];
    const at = `${path}.${key}`;
    if (['url', 'href', 'loader', 'usermeta'].includes(key)) return [`${at}: a chart takes its data from the record only`];
    if (['sequence', 'graticule', 'sphere'].includes(key)) return [`${at}: data made up by the spec is not shown`];
    if (key === 'type' && (value === 'image' || value === 'geoshape')) return [`${at}: ${String(value)} marks are not drawn`];
    return refusals(value, at);
  });
}

/** Functions whose answer changes, or that reach outside the picture. */
function expressionRefusal(text: string, path: string): string[] {
  if (path.includes('.values')) return [];
  const m = /\b(now|random|sample\w+|event|data|setdata|modify|warn|info|debug|window\w*|screen|containerSize)\s*\(/.exec(text);
  return m ? [`${path}: ${m[1]}() is not allowed in a chart`] : [];
}
