// A spec to SVG. Vega is imported when the first chart is drawn, and measures text with the bundled typeface.
import { measure, nearestWeight, type TextStyle } from '../theme/index.js';
import { markBuilds, takeBuilds } from './build.js';
import { refusals, type Spec } from './spec.js';

type Libraries = { vega: typeof import('vega'); vegaLite: typeof import('vega-lite') };
let libraries: Promise<Libraries> | undefined;

async function load(): Promise<Libraries> {
  const [vega, vegaLite, scenegraph] = await Promise.all([import('vega'), import('vega-lite'), import('vega-scenegraph')]);
  scenegraph.textMetrics.width = (item, text) => {
    const lines = [text ?? item.text ?? ''].flat().map(String);
    return Math.max(...lines.map((l) => measure(l, styleOf(item.fontSize, item.fontWeight))));
  };
  return { vega, vegaLite };
}

/** The body as SVG elements, texts with their figures marked as tabular. Throws on a spec that is refused: specs are made here, so that is a bug. */
export async function drawSpec(asked: Spec): Promise<string> {
  const { spec, builds, growing } = takeBuilds(asked);
  const wrong = refusals(spec);
  if (wrong.length) throw new Error(wrong.join('; '));
  const { vega, vegaLite } = await (libraries ??= load());
  const compiled = vegaLite.compile(spec as never, { logger: silent }).spec;
  const view = new vega.View(vega.parse(compiled), { renderer: 'none', loader: refusing as never, logger: silent as never });
  const svg = await view.toSVG();
  view.finalize();
  return markBuilds(svg, builds, growing)
    .replace(/^<svg[^>]*>/, '').replace(/<\/svg>$/, '')
    .replace(/<path class="(background|foreground)"[^>]*\/>/g, '')
    // One role for the whole picture: parts with roles of their own and no names are noise to a screen reader.
    .replace(/ (?:role="graphics-[a-z]+"|aria-roledescription="[^"]*"|aria-hidden="true")/g, '')
    .replace(/ (?:d|transform|[xy]2?)="[^"]*"/g, (attribute) => attribute.replace(/\d+\.\d{4,}/g, (n) => String(Math.round(Number(n) * 1000) / 1000)))
    .replace(/<text ([^>]*font-weight="(?:500|700)")/g, '<text font-feature-settings="tnum" $1');
}

/** Names (600) keep their proportional figures; axis figures and values stand in columns. */
function styleOf(size = 11, weight: number | string = 500): TextStyle {
  const w = nearestWeight(weight === 'bold' ? 700 : Number(weight) || 500);
  return { size, weight: w, tabular: w !== 600 };
}

const refuse = (): never => {
  throw new Error('a chart reads no files and fetches nothing');
};

const refusing = { load: refuse, sanitize: refuse, http: refuse, file: refuse, options: {} };

const silent = { level: () => silent, error: (...args: unknown[]) => { throw new Error(args.join(' ')); }, warn: (...args: unknown[]) => { throw new Error(args.join(' ')); }, info: () => silent, debug: () => silent };
