// The plain values of a record: texts, ids, quantities, days, paths.
import { idRule, isId } from './key.js';
import { list, turned, written } from './shape.js';

export const asId = (text: string) => (isId(text) ? undefined : `"${text}" cannot be an id: ${idRule}`);
export const text = (says: string) => written('a text', says);
export const texts = (says: string) => list(written('a text'), says, true);
export const id = (says: string) => written('an id', says, asId, { type: ['string', 'number'] });
/** A name that stands elsewhere in the record; `Names` tells whether it does. */
export const ref = (says: string) => written('an id', says, undefined, { type: ['string', 'number'] });
export const refs = (says: string) => list(ref('An id.'), says, true);
export const quantity = (says: string) => written('a value with its unit (61 °C)', says, undefined, { type: ['string', 'number'] });
export const column = written('a heading or a column number', 'Heading of the column, or its number from 1 where the log has no header.', undefined, { type: ['string', 'integer'] });
export const path = (says: string) => turned(written('a path', says, (t) => pathFault(ownFolder(t)), { type: 'string' }), (w) => ({ ...w, text: ownFolder(w.text) }));
export const ownFolder = (t: string) => t.replace(/^(\.\/)+/, '');

/** What keeps a path from being read: only files of the episode's own folder are. */
export function pathFault(path: string): string | undefined {
  if (/[\u0000-\u001f]/.test(path)) return 'a path may not contain control characters';
  if (path.includes('\\')) return `write "${path.replace(/\\/g, '/')}": paths have forward slashes`;
  if (/^[A-Za-z][A-Za-z0-9+.-]*:/.test(path)) return `"${path}" is no path within the episode's folder`;
  if (path.startsWith('/') || path.startsWith('~')) return `"${path}" must be relative to the episode's folder`;
  const parts = path.split('/');
  if (parts.includes('..')) return `"${path}" leaves the episode's folder`;
  if (parts.some((p) => p === '' || p === '.')) return `"${path}" has an empty step; write it without "./" and "//"`;
  return undefined;
}

/** `measure`, `measure/part` or `measure/part/phase`. */
export function measurePath(most: number): (text: string) => string | undefined {
  return (t) => {
    const parts = t.split('/');
    if (parts.length > most) return most === 2 ? 'expected measure or measure/part' : 'expected measure, measure/part or measure/part/phase';
    if (parts[0] === '') return 'a measure comes first (temperature/core)';
    const odd = parts.find((p) => p !== '' && !isId(p));
    return odd === undefined ? undefined : `"${odd}" cannot be an id: ${idRule}`;
  };
}

export const day = (says: string) => written('a day (2026-03-14)', says, dayFault, { type: 'string', format: 'date' });

function dayFault(t: string): string | undefined {
  if (isDay(t)) return undefined;
  const m = /^(\d{4})[-./](\d{1,2})[-./](\d{1,2})$/.exec(t) ?? /^(?<d>\d{1,2})\.(?<m>\d{1,2})\.(?<y>\d{4})$/.exec(t);
  const [y, month, d] = m?.groups ? [m.groups.y!, m.groups.m!, m.groups.d!] : [m?.[1] ?? '', m?.[2] ?? '', m?.[3] ?? ''];
  const meant = `${y}-${month.padStart(2, '0')}-${d.padStart(2, '0')}`;
  return `"${t}" is not a day; write ${isDay(meant) ? meant : 'it as 2026-03-14'}`;
}

/** A day of the calendar, ISO 8601. */
export function isDay(t: string): boolean {
  const m = /^(\d{4})-(\d\d)-(\d\d)$/.exec(t);
  if (!m) return false;
  const [y, month, day] = [Number(m[1]), Number(m[2]), Number(m[3])];
  const leap = (y % 4 === 0 && y % 100 !== 0) || y % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return month >= 1 && month <= 12 && day >= 1 && day <= days[month - 1]!;
}
