// YAML text to a tree of nodes, with every fault of form as a finding in plain words.
import { type Alias, type Document, isAlias, isMap, isScalar, isSeq, type Node, parseDocument, visit } from 'yaml';
import type { Finding, Outcome, Place, Source } from '../places/index.js';

export type { Node, YAMLMap } from 'yaml';
export { isMap, isScalar, isSeq } from 'yaml';

/** Characters; beyond it a record is refused unread. Readings in bulk belong in CSV. */
const largestRecord = 2_000_000;
/** Nodes read through aliases, in all; some thousands are a person's work, more is an attack or an accident. */
const mostThroughAliases = 20_000;

/** A record's nodes and the findings on them, handed through all readers of its parts. */
export class Reader {
  readonly source: Source;
  readonly findings: Finding[];
  readonly #document: Document.Parsed;
  #anchors: Map<Alias, Node | undefined> | undefined;
  #open = new Set<Node>();
  #through = 0;
  #burst = false;

  constructor(source: Source, document: Document.Parsed, findings: Finding[]) {
    this.source = source;
    this.#document = document;
    this.findings = findings;
  }

  place(node: Node | null | undefined, around?: Place): Place {
    const range = node?.range;
    if (!range) return around ?? this.source.place(0);
    let end = range[1];
    while (end > range[0] && /\s/.test(this.source.text[end - 1]!)) end--;
    return this.source.place(range[0], end);
  }

  fail(place: Place, code: string, message: string, more: Partial<Finding> = {}): void {
    this.findings.push({ code, severity: 'error', place, message: message.charAt(0).toUpperCase() + message.slice(1), ...more });
  }

  /** What an alias stands for; the node itself otherwise. Undefined, and a finding, for an unknown, cyclic or bursting one. */
  resolve(node: Node | null | undefined): Node | null | undefined {
    if (!isAlias(node)) return node;
    this.#anchors ??= targets(this.#document);
    const target = this.#anchors.get(node);
    const place = this.place(node);
    if (!target) {
      this.fail(place, 'yaml-alias', `nothing above is marked &${node.source}`, { said: `*${node.source}` });
    } else if (this.#open.has(target) || contains(target, node)) {
      this.fail(place, 'yaml-alias', `*${node.source} stands inside itself`, { said: `*${node.source}` });
    } else if ((this.#through += size(target)) > mostThroughAliases) {
      if (!this.#burst) this.fail(place, 'yaml-alias', 'aliases of aliases make this record grow beyond all bounds; write the values out', { said: `*${node.source}` });
      this.#burst = true;
    } else {
      return target;
    }
    return undefined;
  }
}

/** What a file is called in findings, and what it should hold. */
export interface Form {
  what: string;
  holds: string;
}

/** The root of the one document in `source`. Undefined where the form is too broken to read on. */
export function readDocument(source: Source, { what, holds }: Form = { what: 'record', holds: 'at least a title and readings' }): Outcome<{ root: Node; reader: Reader }> {
  const findings: Finding[] = [];
  const bad = (start: number, end: number, code: string, message: string, more: Partial<Finding> = {}) =>
    findings.push({ code, severity: 'error', place: source.place(start, end), message, ...more });
  const { text } = source;
  const none = { value: undefined, findings };
  if (text.length > largestRecord) {
    bad(0, 0, 'record-size', `The ${what} has ${text.length} characters, more than ${largestRecord}; readings in bulk belong in a table (CSV) that the record names`);
    return none;
  }
  const odd = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/.exec(text);
  if (odd) {
    bad(odd.index, odd.index + 1, 'yaml-form', `The character U+${odd[0].charCodeAt(0).toString(16).padStart(4, '0').toUpperCase()} may not stand in a ${what}`);
    return none;
  }
  const document = parse(text);
  if (!document) {
    bad(0, 0, 'yaml-form', `The ${what} is nested too deeply to be read`);
    return none;
  }
  let readable = true;
  const seen = new Set<string>();
  for (const e of [...document.errors, ...document.warnings]) {
    const [start, end] = e.pos;
    const line = source.place(start).line;
    readable = false;
    if (seen.has(`${e.code}${line}`) || findings.length > 20) continue;
    seen.add(`${e.code}${line}`);
    const swallowed = /Flow (map|sequence)/i.test(e.message) ? swallowedBracket(source, line) : undefined;
    if (swallowed) {
      findings.push({ code: 'yaml-comment', severity: 'error', place: swallowed, message: 'What follows " #" is a comment, here with the closing bracket in it; put the text in quotes' });
      continue;
    }
    const broken = text.slice(start, end).search(/[\r\n]/);
    bad(start, broken > 0 ? start + broken : Math.min(end, text.length), e.code === 'TAB_AS_INDENT' ? 'yaml-tab' : 'yaml-form', plainly(e.code, e.message, text.slice(start, end)));
  }
  const second = secondDocument(text, document);
  if (second !== undefined) {
    bad(second, second + 3, 'yaml-form', `A second document begins here; a ${what} is one document`);
    readable = false;
  }
  const root = document.contents;
  if (readable && (!root || (isScalar(root) && root.value === null))) {
    bad(0, 0, 'record-empty', `The ${what} is empty; expected ${holds}`);
    return none;
  }
  if (readable && !isMap(root)) {
    const range = root!.range;
    const lineEnd = /[\r\n]|$/.exec(text.slice(range[0]))!.index;
    bad(range[0], Math.min(range[1], range[0] + lineEnd), 'record-form', `Expected a map of fields (${what === 'record' ? 'title' : 'name'}: …), found ${isSeq(root) ? 'a list' : isScalar(root) ? 'a single value' : 'an alias'}`);
    return none;
  }
  return { value: readable ? { root: root!, reader: new Reader(source, document, findings) } : undefined, findings };
}

/** Doubled keys are found by the shapes: the parser's own search takes a time that grows with the square of their number. */
function parse(text: string): Document.Parsed | undefined {
  try {
    return parseDocument(text, { version: '1.2', schema: 'core', strict: true, uniqueKeys: false, prettyErrors: false, logLevel: 'silent' }) as Document.Parsed;
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

function secondDocument(text: string, document: Document.Parsed): number | undefined {
  const from = document.range[1];
  const rest = /^---(?=\s|$)/m.exec(text.slice(from));
  if (!rest) return undefined;
  const at = from + rest.index;
  return text.slice(0, at).replace(/^\s*(#.*)?$/gm, '').trim() === '' ? undefined : at;
}

/** A comment that holds the bracket which the parser misses, on this line or one of the few before it. */
function swallowedBracket(source: Source, line: number): Place | undefined {
  for (let n = line; n > 0 && n > line - 6; n--) {
    const m = /\s(#[^#]*[}\]].*)$/.exec(source.line(n));
    if (m && /[{[]/.test(source.line(n).slice(0, m.index))) return source.place(source.offset(n, m.index + 2), source.offset(n, m.index + 2 + m[1]!.length));
  }
  return undefined;
}

function plainly(code: string, message: string, at: string): string {
  switch (code) {
    case 'TAB_AS_INDENT': return 'A tab cannot indent here; YAML is indented with spaces';
    case 'BLOCK_AS_IMPLICIT_KEY': return 'A second ": " on this line; put a text that contains a colon in quotes, or begin a new line for a new field';
    case 'MULTILINE_IMPLICIT_KEY': return 'This line has no ": " and is no list item; a field is written name: value';
    case 'BAD_SCALAR_START': return `A plain text cannot begin with ${at.trim() || 'this character'}; put it in quotes`;
    case 'MISSING_CHAR': return `${message.replace(/"quote/, 'quote').replace(/^Flow map must end with a \}/, 'A map opened with { is never closed with }').replace(/^Flow sequence must end with a \]/, 'A list opened with [ is never closed with ]')}`;
    case 'BAD_INDENT': if (/Flow/.test(message)) return `A ${/map/i.test(message) ? 'map opened with {' : 'list opened with ['} is not closed before this line`;
      return `The indentation does not fit what stands above (${message.charAt(0).toLowerCase()}${message.slice(1)})`;
    case 'TAG_RESOLVE_FAILED': return 'Tags (a word after "!") are not used in a record; put a text that begins with "!" in quotes';
    case 'RESOURCE_EXHAUSTION': return 'The record is nested too deeply to be read';
    case 'UNEXPECTED_TOKEN': return `This does not fit here: ${message.charAt(0).toLowerCase()}${message.slice(1)}`;
    default: return message;
  }
}

/** Each alias with the node that bears its anchor last before it. */
function targets(document: Document.Parsed): Map<Alias, Node | undefined> {
  const anchors = new Map<string, Node>();
  const found = new Map<Alias, Node | undefined>();
  visit(document, {
    Node(_, node) {
      if (isAlias(node)) found.set(node, anchors.get(node.source));
      else if ((node as { anchor?: string }).anchor) anchors.set((node as { anchor: string }).anchor, node as Node);
    },
  });
  return found;
}

function contains(outer: Node, inner: Node): boolean {
  const a = outer.range;
  const b = inner.range;
  return Boolean(a && b && a[0] <= b[0] && b[1] <= a[1]);
}

const sizes = new WeakMap<Node, number>();
function size(node: Node): number {
  const known = sizes.get(node);
  if (known !== undefined) return known;
  let n = 0;
  visit(node, { Node() { n++; } });
  sizes.set(node, n);
  return n;
}
