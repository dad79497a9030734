// A theme file to a theme: complete, and fit to be read over any footage.
import { type Finding, type Outcome, type Place, Source } from '../places/index.js';
import { type Colour, colourNames, spaceNames, strokeNames, type Theme, themeFaults, typeNames } from '../theme/index.js';
import { readDocument } from './document.js';
import { type ShippedTheme, themeShape } from './theme-shape.js';

/** Contents of `templates/`, by name. */
export type TemplateReader = (name: string) => string;

const parts = { colours: colourNames, panel: ['opacity', 'corner'], type: typeNames, space: spaceNames, stroke: strokeNames, motion: ['rate', 'come', 'stand', 'go', 'easing'] } as const;

/** Undefined where there is an error. `template` gives the shipped theme that a file takes the rest from. */
export function readTheme(source: Source, template: TemplateReader): Outcome<Theme> {
  const document = readDocument(source, { what: 'theme', holds: 'at least the colours' });
  const renamed = (findings: readonly Finding[]): Finding[] => findings.map((f) => ({ ...f, code: f.code.replace(/^record-/, 'theme-') }));
  if (!document.value) return { value: undefined, findings: renamed(document.findings) };
  const { root, reader } = document.value;
  const read = themeShape.read(root, reader, source.place(0));
  const { findings } = reader;
  const done = (value: Theme | undefined): Outcome<Theme> => ({ value: findings.some((f) => f.severity === 'error') ? undefined : value, findings: renamed(findings) });
  if (!read) return done(undefined);
  const { fields: f, keys } = read;
  const base = f.from && shippedTheme(f.from.value, template);
  const whole = source.wholeLine(reader.place(root).line);
  const part = <P extends keyof typeof parts>(name: P): Theme[P] => {
    const given = f[name];
    // What stands there and could not be read has its finding already.
    const lacks = keys.from || (keys[name] && !given) ? [] : parts[name].filter((k) => !given || !(k in given.keys));
    if (lacks.length > 0) reader.fail(keys[name] ?? whole, 'record-missing', `${given ? `"${name}" lacks ${lacks.join(', ')}` : `the theme lacks "${name}"`}; give ${lacks.length > 1 ? 'them' : 'it'}, or take the rest from a theme: "from: dark"`, { subject: name });
    return { ...base?.[name], ...Object.fromEntries(Object.entries(given?.fields ?? {}).map(([k, v]) => [k, plain(v)])) } as Theme[P];
  };
  const theme: Theme = { name: f.name?.text ?? base?.name ?? '', colours: part('colours'), panel: part('panel'), type: part('type'), space: part('space'), stroke: part('stroke'), motion: part('motion') };
  if (findings.some((x) => x.severity === 'error')) return done(undefined);
  const placeOf = (colour: Colour): Place | undefined => f.colours?.fields[colour]?.place;
  for (const { code, colours, message } of themeFaults(theme)) {
    const [one, other] = colours.map(placeOf);
    reader.fail(one ?? other ?? keys.panel ?? whole, code, message, { subject: colours.join('/'), ...(one && other && { related: [{ place: other, label: 'against this one' }] }) });
  }
  return done(theme);
}

/** A read value without its place. */
function plain(value: unknown): unknown {
  const { value: number, text } = value as { value?: number; text?: string };
  return number ?? text ?? value;
}

const read = new Map<ShippedTheme, Theme>();

/** A theme of templates/themes. Throws where it is unfit: they are ours. */
export function shippedTheme(name: ShippedTheme, template: TemplateReader): Theme {
  let theme = read.get(name);
  if (!theme) {
    const { value, findings } = readTheme(new Source(`themes/${name}.yaml`, template(`themes/${name}.yaml`)), template);
    if (!value) throw new Error(findings.map((f) => `${f.place.file}:${f.place.line} ${f.message}`).join('\n'));
    read.set(name, (theme = value));
  }
  return theme;
}
