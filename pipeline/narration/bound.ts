// Bound scripts: a script whose numbers come from facts, as a Handlebars template.
//   {{say "rise:bench/stock/scene/temperature/core/load~workload=,phase=idle"}}   twenty-nine degrees
//   {{fact "bench/stock/scene/power/board/load"}}                                 248 W
//   {{name "setup" "bench"}}                                                      the bench
// Only these helpers exist; a template reaches nothing else. Whatever cannot be filled in is a finding at its place.
import Handlebars from 'handlebars';
import { type Fact, type Facts, withValue } from '../facts/index.js';
import { keyFields } from '../facts/index.js';
import { type Finding, nearest, type Outcome, Source } from '../places/index.js';
import { show, showNumber } from '../quantities/index.js';
import { factNamed } from './lookup.js';
import { namedOf, noun } from './names.js';
import { Voice } from './voice.js';

type Statement = hbs.AST.Statement;
type Options = Record<string, string | number | boolean>;

interface Helper {
  options: readonly string[];
  fill(facts: Facts, params: string[], options: Options): { text: string } | { why: string; code: string; suggest?: string };
}

const helpers: Record<string, Helper> = {
  fact: {
    options: ['size', 'number'],
    fill: (facts, params, options) => withFact(facts, params, (f) => {
      const value = options.size ? f.value.abs() : f.value;
      return options.number ? showNumber(value, f.decimals) : show(value, f.unit, f.decimals);
    }),
  },
  say: {
    options: ['size', 'number', 'digits', 'british'],
    fill: (facts, params, options) => withFact(facts, params, (f) => {
      const voice = new Voice({ form: options.digits ? 'digits' : 'words', british: Boolean(options.british) });
      const said = options.size ? withValue(f, f.value.abs()) : f;
      return options.number ? voice.number(said) : voice.say(said);
    }),
  },
  name: {
    options: ['shown'],
    fill(facts, [field = '', id = ''], options) {
      const fields: readonly string[] = keyFields;
      if (!fields.includes(field)) return { code: 'bound-name', why: `"${field}" is no kind of name; there are ${keyFields.join(', ')}` };
      const known = [...facts.about[`${field}s` as 'setups'].keys()];
      if (!known.includes(id)) {
        const near = nearest(id, known);
        return { code: 'bound-name', why: `the record has no ${field} "${id}"${near ? `; did you mean "${near}"?` : ''}`, suggest: near };
      }
      const named = namedOf(facts, field as 'setup', id);
      return { text: options.shown ? named.name : noun(named) ?? named.spoken[0] ?? named.name };
    },
  },
};

/** A stretch of the filled-in script and where it comes from: text of the template, or one {{…}} filled in. */
export interface BoundPart {
  text: string;
  /** Offsets into the template. Text that was taken over as it stands begins at `start`. */
  start: number;
  end: number;
  filled: boolean;
}

/** The script with its numbers filled in; undefined as soon as one cannot be. `template` may be a `Source`, so that findings name its file. */
export function renderBound(template: string | Source, facts: Facts): Outcome<string> {
  const { value, findings } = boundParts(template, facts);
  return { value: value?.map((p) => p.text).join(''), findings };
}

/** The same in parts. A script is Markdown, not HTML: what is filled in stands as it is, and a page escapes it when it shows it. */
export function boundParts(template: string | Source, facts: Facts): Outcome<BoundPart[]> {
  const source = typeof template === 'string' ? new Source('script.md', template) : template;
  const parsed = parse(source);
  if ('finding' in parsed) return { value: undefined, findings: [parsed.finding] };
  const findings = parsed.body.flatMap((s) => check(s, source, facts));
  if (findings.length) return { value: undefined, findings };
  return { value: parsed.body.flatMap((s) => part(s, source, facts)), findings: [] };
}

function part(statement: Statement, source: Source, facts: Facts): BoundPart[] {
  const [start, end] = [offset(source, statement.loc.start), offset(source, statement.loc.end)];
  if (statement.type === 'ContentStatement') {
    // {{~ and comments alone on their line take white space with them.
    const { value } = statement as hbs.AST.ContentStatement;
    const at = source.text.slice(start, end).indexOf(value);
    return value === '' ? [] : [at < 0 ? { text: value, start, end, filled: true } : { text: value, start: start + at, end: start + at + value.length, filled: false }];
  }
  if (statement.type !== 'MustacheStatement') return [];
  const { path, params, hash } = statement as hbs.AST.MustacheStatement;
  const options = Object.fromEntries((hash?.pairs ?? []).map(({ key, value }) => [key, (value as hbs.AST.BooleanLiteral).value]));
  const made = helpers[(path as hbs.AST.PathExpression).original]!.fill(facts, params.map((p) => (p as hbs.AST.StringLiteral).value), options);
  return [{ text: 'text' in made ? made.text : '', start, end, filled: true }];
}

function parse(source: Source): { body: Statement[] } | { finding: Finding } {
  try {
    return { body: Handlebars.parse(source.text).body };
  } catch (error) {
    const e = error as Error & { hash?: { loc?: { first_line: number; first_column: number } }; lineNumber?: number; column?: number };
    const line = e.hash?.loc?.first_line ?? e.lineNumber ?? Number(/line (\d+)/.exec(e.message)?.[1] ?? 1);
    const what = /got '(\w+)'/.exec(e.message)?.[1] === 'EOF' ? 'a {{ is never closed' : 'this is no well-formed {{…}}';
    const message = `${what}; a bound script knows {{fact "ID"}}, {{say "ID"}} and {{name "setup" "ID"}}`;
    return { finding: { code: 'bound-syntax', severity: 'error', place: source.wholeLine(Math.min(line, source.text.split('\n').length)), message } };
  }
}

function check(statement: Statement, source: Source, facts: Facts): Finding[] {
  if (statement.type === 'ContentStatement' || statement.type === 'CommentStatement') return [];
  const place = placeOf(source, statement.loc);
  const wrong = (code: string, message: string, more: Partial<Finding> = {}): Finding[] => [{ code, severity: 'error', place, message, said: source.text.slice(offset(source, statement.loc.start), offset(source, statement.loc.end)), ...more }];
  if (statement.type !== 'MustacheStatement') return wrong('bound-syntax', 'blocks and partials have no place in a bound script; it knows {{fact "ID"}}, {{say "ID"}} and {{name "setup" "ID"}}');
  const { path, params, hash } = statement as hbs.AST.MustacheStatement;
  const name = path.type === 'PathExpression' ? (path as hbs.AST.PathExpression).original : '';
  const helper = Object.hasOwn(helpers, name) ? helpers[name] : undefined;
  if (!helper) {
    const near = nearest(name, Object.keys(helpers));
    return wrong('bound-syntax', `"${name}" is nothing that can be filled in${near ? `; did you mean {{${near} …}}?` : '; there are fact, say and name'}`);
  }
  const literal = params.every((p) => p.type === 'StringLiteral');
  if (!literal || params.length === 0) return wrong('bound-syntax', `{{${name}}} takes its id in quotes: {{${name} "${name === 'name' ? 'setup" "ID' : 'ID'}"}}`);
  const options: Options = {};
  for (const { key, value } of hash?.pairs ?? []) {
    if (!helper.options.includes(key) || value.type !== 'BooleanLiteral') return wrong('bound-syntax', `{{${name}}} has no option ${key}; it takes ${helper.options.map((o) => `${o}=true`).join(', ')}`);
    options[key] = (value as hbs.AST.BooleanLiteral).value;
  }
  const filled = helper.fill(facts, params.map((p) => (p as hbs.AST.StringLiteral).value), options);
  return 'text' in filled ? [] : wrong(filled.code, filled.why, filled.suggest === undefined ? {} : { suggest: filled.suggest });
}

function withFact(facts: Facts, params: string[], put: (fact: Fact) => string): { text: string } | { why: string; code: string; suggest?: string } {
  const found = factNamed(facts, params);
  return 'fact' in found ? { text: put(found.fact) } : { code: 'bound-fact', ...found };
}

/** Handlebars counts lines from 1 and columns from 0. */
function offset(source: Source, at: { line: number; column: number }): number {
  let from = 0;
  for (let line = 1; line < at.line; line++) from = source.text.indexOf('\n', from) + 1;
  return from + at.column;
}

function placeOf(source: Source, loc: hbs.AST.SourceLocation) {
  return source.place(offset(source, loc.start), offset(source, loc.end));
}
