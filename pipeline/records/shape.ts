// The shapes a record is made of: each reads a YAML node with every error in place, and says itself as JSON Schema,
// so that the reader and the editor's completion cannot disagree.
import { nearest, type Place } from '../places/index.js';
import { decimalCommas } from './decimal-commas.js';
import { isMap, isScalar, isSeq, type Node, type Reader } from './document.js';

export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
export type JsonObject = { [key: string]: Json };

export interface Shape<T> {
  /** What is expected, in words: "a list of texts". */
  expects: string;
  /** Undefined where it could not be read; then there is a finding. `around` is where a missing value would stand. */
  read(node: Node | null | undefined, reader: Reader, around: Place): T | undefined;
  schema(): JsonObject;
  /** A field of this shape may be left empty ("readings:"), as in a record still to be filled in. */
  mayBeEmpty?: boolean;
}

/** A text as it was written, with its place. Numbers keep the very digits that stand in the file. */
export interface Written {
  text: string;
  place: Place;
  /** Offset of its first character, where the text stands in the file letter by letter. */
  verbatim?: number;
}

/** Shapes that stand once in the schema, under their name. */
export const definitions = new Map<string, Shape<unknown>>();

export function defined<T>(name: string, shape: Shape<T>): Shape<T> {
  definitions.set(name, shape);
  return { ...shape, schema: () => ({ $ref: `#/$defs/${name}` }) };
}

export interface Entry<T> {
  key: Written;
  value: T;
}

export type Read<S> = S extends Shape<infer T> ? T : never;

function describe(node: Node | null | undefined): string {
  if (isMap(node)) return 'a map';
  if (isSeq(node)) return 'a list';
  if (!isScalar(node) || node.value === null) return 'nothing';
  const text = String(node.source ?? node.value);
  return `"${text.length > 40 ? `${text.slice(0, 40)}…` : text}"`;
}

/** The written text of a scalar, or undefined for anything else. */
function writtenOf(node: Node | null | undefined, reader: Reader): Written | undefined {
  if (!isScalar(node) || node.value === null) return undefined;
  const text = typeof node.value === 'string' ? node.value : String(node.source ?? node.value);
  const start = (node.range?.[0] ?? 0) + (node.type === 'PLAIN' ? 0 : 1);
  const verbatim = node.range && reader.source.text.startsWith(text, start) ? start : undefined;
  if (node.type === 'PLAIN' && node.comment && /^[^\s#]/.test(node.comment)) {
    const at = reader.source.text.indexOf(`#${node.comment}`, node.range![1]);
    if (at >= 0) {
      reader.findings.push({
        code: 'yaml-comment', severity: 'warning', place: reader.source.place(at, at + node.comment.length + 1), said: `#${node.comment}`,
        message: `What follows " #" is a comment and no part of the text; put the text in quotes if "#${node.comment}" belongs to it`,
      });
    }
  }
  return { text, place: reader.place(node), verbatim };
}

function mismatch(reader: Reader, node: Node | null | undefined, around: Place, expects: string): undefined {
  reader.fail(isNothing(node) ? around : reader.place(node, around), 'record-form', `expected ${expects}, found ${describe(node)}`);
  return undefined;
}

/** Any single value, as it was written. `test` gives what is wrong with it, in words. */
export function written(expects: string, says = expects, test?: (text: string) => string | undefined, schema: JsonObject = { type: ['string', 'number', 'boolean'] }): Shape<Written> {
  return {
    expects,
    read(raw, reader, around) {
      const node = reader.resolve(raw);
      if (node === undefined && raw) return undefined;
      const w = writtenOf(node, reader);
      if (!w || (w.text.trim() === '' && test === undefined)) return mismatch(reader, node, around, expects);
      const why = test?.(w.text);
      if (why === undefined) return w;
      reader.fail(w.place, 'record-form', why, { said: w.text });
      return undefined;
    },
    schema: () => ({ ...schema, description: says }),
  };
}

export interface Choice<T extends string> {
  value: T;
  place: Place;
}

export function choice<T extends string>(values: readonly T[], says: string, schemaValues: readonly Json[] = values): Shape<Choice<T>> {
  const expects = values.length < 12 ? `one of ${values.join(', ')}` : says;
  return {
    expects,
    read(raw, reader, around) {
      const node = reader.resolve(raw);
      if (node === undefined && raw) return undefined;
      const w = writtenOf(node, reader);
      if (!w) return mismatch(reader, node, around, expects);
      if ((values as readonly string[]).includes(w.text)) return { value: w.text as T, place: w.place };
      const near = nearest(w.text, values);
      reader.fail(w.place, 'record-form', `"${w.text}" is none of ${values.join(', ')}${near ? `; did you mean ${near}?` : ''}`, { said: w.text, ...(near && { suggest: near }) });
      return undefined;
    },
    schema: () => ({ enum: [...schemaValues], description: says }),
  };
}

/** A list; with `orOne` a single item may stand without its list. */
export function list<T>(item: Shape<T>, says: string, orOne = false): Shape<T[]> {
  const expects = orOne ? `${item.expects} or a list of such` : `a list of ${item.expects}`;
  return {
    expects,
    mayBeEmpty: true,
    read(raw, reader, around) {
      const node = reader.resolve(raw);
      if (node === undefined && raw) return undefined;
      if (isSeq(node)) {
        return node.items.flatMap((n) => {
          const value = item.read(n as Node, reader, reader.place(node, around));
          return value === undefined ? [] : [value];
        });
      }
      if (!orOne || !node) return mismatch(reader, node, around, expects);
      const one = item.read(node, reader, around);
      return one === undefined ? undefined : [one];
    },
    schema(): JsonObject {
      const one = item.schema();
      const many: JsonObject = { type: 'array', items: one };
      return orOne ? { anyOf: [one, many], description: says } : { ...many, description: says };
    },
  };
}

export interface Rest<T> {
  key: (text: string) => string | undefined;
  value: Shape<T>;
  /** Names to look among, besides the fields, for a mistyped key. */
  near?: Iterable<string>;
  pattern?: string;
}

export interface MapRead<F extends Record<string, Shape<unknown>>, R> {
  fields: { [K in keyof F]?: Read<F[K]> };
  /** Where the value of each field stands, and the keys. */
  keys: { [K in keyof F]?: Place };
  rest: Entry<R>[];
  /** Entries that are no field; there is a finding for each. */
  unknown: number;
  place: Place;
}

/** A map with known fields and, if `rest` is given, further entries whose keys are names. */
export function fields<F extends Record<string, Shape<unknown>>, R = never>(
  known: F, options: { expects: string; says?: string; required?: (keyof F & string)[]; rest?: Rest<R>; hint?: string },
): Shape<MapRead<F, R>> {
  const names = Object.keys(known);
  return {
    expects: options.expects,
    read(raw, reader, around) {
      const node = reader.resolve(raw);
      if (node === undefined && raw) return undefined;
      if (!isMap(node)) return mismatch(reader, node, around, options.expects);
      const result: MapRead<F, R> = { fields: {}, keys: {}, rest: [], unknown: 0, place: reader.place(node, around) };
      const seen = new Map<string, Place>();
      const commas = decimalCommas(node, reader);
      for (const pair of node.items) {
        if (commas.has(pair)) continue;
        const key = writtenOf(reader.resolve(pair.key as Node), reader);
        if (!key) {
          reader.fail(reader.place(pair.key as Node, around), 'record-form', `expected a name before the colon, found ${describe(pair.key as Node)}`);
          continue;
        }
        const before = seen.get(key.text);
        if (before) {
          reader.fail(key.place, 'yaml-duplicate', `"${key.text}" stands a second time in the same map; only one can hold`, { said: key.text, related: [{ place: before, label: 'the first one' }] });
          continue;
        }
        seen.set(key.text, key.place);
        if (Object.hasOwn(known, key.text)) {
          result.keys[key.text as keyof F] = key.place;
          if (known[key.text]!.mayBeEmpty && isNothing(pair.value as Node)) continue;
          const value = known[key.text]!.read(pair.value as Node, reader, key.place);
          if (value !== undefined) result.fields[key.text as keyof F] = value as Read<F[keyof F]>;
          continue;
        }
        const why = options.rest ? options.rest.key(key.text) : 'unknown';
        if (options.rest && why === undefined) {
          const value = options.rest.value.read(pair.value as Node, reader, key.place);
          if (value !== undefined) result.rest.push({ key, value });
          continue;
        }
        result.unknown++;
        const near = key.text === '<<' ? undefined : nearest(key.text, [...names, ...(options.rest?.near ?? [])]);
        const expected = names.length && names.length <= 14 ? `; expected ${names.join(', ')}` : '';
        const message = key.text === '<<' ? 'merge keys (<<) are not used in a record; write the fields out'
          : why === 'unknown' ? `unknown field "${key.text}"${near ? `; did you mean ${near}?` : options.hint ?? expected}`
          : `"${key.text}": ${why}${near ? `; did you mean ${near}?` : ''}`;
        reader.fail(key.place, 'record-field', message, { said: key.text, ...(near && { suggest: near }) });
      }
      for (const name of options.required ?? []) {
        if (result.keys[name] === undefined) reader.fail(firstLine(result.place, reader), 'record-missing', `"${name}" is missing; expected ${options.expects}`, { subject: name });
      }
      return result;
    },
    schema(): JsonObject {
      const out: JsonObject = { type: 'object', properties: Object.fromEntries(Object.entries(known).map(([k, s]) => [k, s.mayBeEmpty ? orNothing(s.schema()) : s.schema()])) };
      if (options.rest) {
        const value = options.rest.value.schema();
        if (options.rest.pattern) {
          out.patternProperties = { [options.rest.pattern]: value };
          out.additionalProperties = false;
        } else out.additionalProperties = value;
      } else out.additionalProperties = false;
      if (options.required?.length) out.required = [...options.required];
      if (options.says) out.description = options.says;
      return out;
    },
  };
}

/** A map from names to values, in the order written. */
export function mapOf<T>(value: Shape<T>, expects: string, key: (text: string) => string | undefined, says = expects, near?: Iterable<string>): Shape<Entry<T>[]> {
  const shape = fields({}, { expects, says, rest: { key, value, near } });
  return { ...shape, mayBeEmpty: true, read: (node, reader, around) => shape.read(node, reader, around)?.rest };
}

/** Different readers for a single value, a list, a map, and nothing at all. */
export function byKind<T>(kinds: { scalar?: Shape<T>; list?: Shape<T>; map?: Shape<T>; nothing?: (place: Place) => T }, expects: string, says = expects): Shape<T> {
  return {
    expects,
    mayBeEmpty: !kinds.scalar,
    read(raw, reader, around) {
      const node = reader.resolve(raw);
      if (node === undefined && raw) return undefined;
      if (isNothing(node)) return kinds.nothing ? kinds.nothing(around) : mismatch(reader, node, around, expects);
      const shape = isMap(node) ? kinds.map : isSeq(node) ? kinds.list : kinds.scalar;
      return shape ? shape.read(node, reader, around) : mismatch(reader, node, around, expects);
    },
    schema(): JsonObject {
      const all: Json[] = [kinds.scalar, kinds.list, kinds.map].flatMap((s) => (s ? [s.schema()] : []));
      if (kinds.nothing) all.push({ type: 'null' });
      return { anyOf: all, description: says };
    },
  };
}

/** The same shape, its value turned into another; `turn` may report and give undefined. */
export function turned<A, B>(shape: Shape<A>, turn: (a: A, reader: Reader, around: Place) => B | undefined): Shape<B> {
  return {
    expects: shape.expects,
    mayBeEmpty: shape.mayBeEmpty,
    schema: () => shape.schema(),
    read(node, reader, around) {
      const a = shape.read(node, reader, around);
      return a === undefined ? undefined : turn(a, reader, around);
    },
  };
}

function isNothing(node: Node | null | undefined): boolean {
  return !node || (isScalar(node) && node.value === null);
}

function orNothing(schema: JsonObject): JsonObject {
  const { description, ...rest } = schema;
  return { anyOf: [rest, { type: 'null' }], ...(description !== undefined && { description }) };
}

/** The first line of a place: enough to underline where something is missing from a long map. */
function firstLine(place: Place, reader: Reader): Place {
  if (place.endLine === place.line) return place;
  return { ...place, endLine: place.line, endColumn: reader.source.line(place.line).length + 1 };
}
