// Templates to SVG: they are handed lines with their places, and two helpers to set them with.
import { type Colour, type Colours, type Line, svgText } from '../theme/index.js';

type Templates = (name: string) => string;
interface Painted {
  data: { colours: Colours };
}
let engine: Promise<typeof import('handlebars')> | undefined;
const compiled = new Map<string, HandlebarsTemplateDelegate>();

async function load(): Promise<typeof import('handlebars')> {
  const { default: handlebars } = await import('handlebars');
  const own = handlebars.create();
  own.registerHelper('text', (line: Line, { data }: Painted) => new own.SafeString(svgText(line, data.colours)));
  own.registerHelper('colour', (name: Colour, { data }: Painted) => data.colours[name]);
  own.registerHelper('px', (n: number) => Math.round(n * 100) / 100);
  return own;
}

/** templates/graphics/KIND.svg.hbs filled in; strict, so that a name missing from the model is an error and not a gap. */
export async function fill(kind: string, model: Record<string, unknown>, colours: Colours, templates: Templates): Promise<string> {
  const handlebars = await (engine ??= load());
  const source = templates(`graphics/${kind}.svg.hbs`);
  let template = compiled.get(source);
  if (!template) compiled.set(source, (template = handlebars.compile(source, { strict: true, knownHelpers: { text: true, colour: true, px: true } })));
  return template(model, { data: { colours } }).replace(/>\s+</g, '><').trim();
}
