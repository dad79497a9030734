// Logs as loggers write them and as they should not, from random parts, in every encoding.
import { Buffer } from 'node:buffer';
import fc from 'fast-check';
import type { LogColumn, LogLayout } from '../../pipeline/logs/index.js';
import { unit } from '../../pipeline/quantities/index.js';

const place = { file: 'episode.yaml', line: 1, column: 1, endLine: 1, endColumn: 1 };

const plain = fc.tuple(fc.integer({ min: -999, max: 99_999 }), fc.integer({ min: 0, max: 4 })).map(([n, d]) => (n / 10 ** d).toFixed(d));
const strange = fc.constantFrom('', ' ', 'N/A', '-', 'nan', '1e3', '1.5e-7', '12345678901234567', '0.1234567890123456789', '"12.5"', ' 7 ', '+3', '.5', '5.', '−4', '0x1F', '1,5', '1e999', '123456789012.345', '9.99999999999', '-0', '"a""b"', 'é', '"x\ny"', 'a"b', '"u');
const cell = fc.oneof({ weight: 20, arbitrary: plain }, { weight: 2, arbitrary: strange });
const step = fc.oneof({ weight: 30, arbitrary: fc.constant(1) }, { weight: 1, arbitrary: fc.constantFrom(0, -1, 50, 0.5, 90_000) });
const phase = fc.constantFrom('idle', 'load', 'load', 'load', '"load"', ' load', 'other', 'é');
const tail = fc.oneof({ weight: 30, arbitrary: fc.constant('') }, { weight: 1, arbitrary: fc.constantFrom(',', ',7', 'comment', 'blank', 'cut') });

const column = (name: string, u: string, take: LogColumn['take'], constant?: string): LogColumn => ({ at: { name, place }, measure: name, part: '', unit: unit(u), take, ...(constant && { phase: constant }) });
const columns = (take: LogColumn['take']): LogColumn[] => [column('a', 'degC', 'mean'), column('b', 'dB(A)', 'mean'), column('c', 'W', take), column('c', 'W', 'mean', 'limit')];

export const elapsed: LogLayout['time'] = { kind: 'elapsed', at: { name: 't', place }, unit: unit('s') };

/** t, phase, a, b, c; a sample a second, all of it load. */
export const steady: LogLayout = {
  name: 'steady', place, delimiter: ',', decimalComma: false, skip: 0, under: 0, header: true, missing: new Set(), energies: [],
  time: { kind: 'steps', seconds: 1 }, phase: 'load', windows: [], columns: columns('max'),
};

export interface RandomLog {
  bytes: Uint8Array;
  layout: LogLayout;
}

export const randomLog: fc.Arbitrary<RandomLog> = fc.record({
  rows: fc.array(fc.tuple(step, phase, cell, cell, cell, tail), { maxLength: 60 }),
  end: fc.constantFrom('\n', '\r\n', '\r'), mixed: fc.boolean(), spareHeading: fc.boolean(), phased: fc.boolean(), windowed: fc.boolean(),
  time: fc.constantFrom('s', 'iso', 'clock', 'steps'),
  encoding: fc.constantFrom('utf-8', 'marked', 'utf-16le', 'utf-16be', 'windows-1252'),
  take: fc.constantFrom('max', 'min', 'last', 'increase'),
}).map((r) => {
  let t = r.time === 'clock' ? 86_380 : 0;
  const lines = [`t,phase,a,b,c${r.spareHeading ? ',' : ''}`];
  for (const [dt, said, a, b, c, end] of r.rows) {
    t += dt;
    const whole = `${stamp(t, r.time)},${said},${a},${b},${c}`;
    if (end === 'comment') lines.push('# a note');
    if (end === 'blank') lines.push('');
    lines.push(end === 'cut' ? whole.slice(0, whole.length >> 1) : end.startsWith(',') ? whole + end : whole);
  }
  const text = lines.map((l, i) => l + (r.mixed && i % 3 === 0 ? '\r\n' : r.end)).join('');
  const layout: LogLayout = {
    ...steady, columns: columns(r.take as LogColumn['take']), comment: '#', missing: new Set(['N/A', '-']),
    ...(r.encoding === 'windows-1252' && { encoding: 'windows-1252' as const }),
    time: r.time === 'steps' ? { kind: 'steps', seconds: 0.5 } : r.time === 's' ? elapsed : { kind: r.time === 'iso' ? 'iso' : 'clock', at: { name: 't', place } },
    ...(r.phased && { phaseColumn: { at: { name: 'phase', place }, place }, phase: undefined }),
    windows: r.windowed ? [{ phase: 'load', last: 10, place }, { phase: 'early', from: 3, to: 12, place, ...(r.phased && { of: 'load' }) }] : [],
  };
  return { bytes: encoded(text, r.encoding), layout };
});

function stamp(t: number, kind: string): string {
  if (kind === 'iso') return new Date(Date.UTC(2026, 0, 1) + Math.round(t * 1000)).toISOString();
  if (kind !== 'clock') return String(t);
  const s = ((t % 86_400) + 86_400) % 86_400;
  return [s / 3600, (s % 3600) / 60, s % 60].map((x) => String(Math.floor(x)).padStart(2, '0')).join(':');
}

function encoded(text: string, encoding: string): Uint8Array {
  if (encoding === 'utf-16le') return Buffer.from(`\ufeff${text}`, 'utf16le');
  if (encoding === 'utf-16be') return Buffer.from(`\ufeff${text}`, 'utf16le').swap16();
  if (encoding === 'windows-1252') return Buffer.from(text.replace(/[^\0-\xff]/g, '?'), 'latin1');
  return Buffer.from((encoding === 'marked' ? '\ufeff' : '') + text);
}
