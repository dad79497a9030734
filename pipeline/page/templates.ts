// Handlebars as the page uses it: everything escaped, nothing missing passed over in silence.
import Handlebars from 'handlebars';

/** The text of a template by its path below templates/, e.g. `page/episode.hbs`. */
export type TemplateReader = (name: string) => string;

const compiled = new Map<string, Handlebars.TemplateDelegate>();

/** Throws on a value that the template names and the view lacks: that is a bug, not bad input. */
export function fill(text: string, view: object, partials: Readonly<Record<string, string>> = {}): string {
  let render = compiled.get(text);
  if (!render) {
    const own = Handlebars.create();
    for (const [name, partial] of Object.entries(partials)) own.registerPartial(name, partial);
    render = own.compile(text, { strict: true, knownHelpersOnly: true, preventIndent: true });
    compiled.set(text, render);
  }
  return render(view);
}
