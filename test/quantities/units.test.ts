import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convert, convertQuantity, differenceUnit, Exact, findUnit, perUnit, readQuantity, secondUnit, show, unit, units } from '../../pipeline/quantities/index.js';
import { oracle } from '../oracles/table.js';

const exact = (t: string): Exact => Exact.parse(t)!;

// Names of unit_factors.csv (NIST SP 811 App. B.8; IEC 80000-13) that are units of the trade here.
const named: Record<string, string> = {
  inch: 'in', foot: 'ft', 'gallon (US)': 'gal', 'gal(US)/min': 'gal/min', 'ft3/min': 'ft3/min', 'm3/h': 'm3/h', psi: 'psi', bar: 'bar',
  'inH2O (conventional)': 'inH2O', 'mmH2O (conventional)': 'mmH2O', 'W h': 'Wh', 'degF difference': 'delta-degF', KiB: 'KiB', MiB: 'MiB', GiB: 'GiB', TiB: 'TiB',
};
const factors = oracle('unit_factors.csv').filter((r) => named[r['from']!] && units.has(named[r['to']!] ?? r['to']!) && !(r['from'] === 'ft3/min' && r['to'] === 'L/s'));

test('most of the published factors are of units used here', () => {
  expect(factors.length).toBeGreaterThanOrEqual(15);
});

test.each(factors)('one $from is $multiply_by $to ($source)', ({ from, to, multiply_by, exactness }) => {
  const value = convert(Exact.of(1), unit(named[from!]!), unit(named[to!] ?? to!))!;
  const printed = exact(multiply_by!);
  if (exactness!.startsWith('exact')) expect(value.equals(printed)).toBe(true);
  else expect(value.minus(printed).abs().over(printed).toNumber()).toBeLessThan(1e-12);
});

// Fixed points of NIST SP 811, B.8 and B.9.
test.each(oracle('temperature_points.csv'))('$degF °F is $degC °C ($note)', ({ degF, degC }) => {
  const value = convert(exact(degF!), unit('degF'), unit('degC'))!;
  expect(value.toFixed(6)).toBe(exact(degC!).toFixed(6));
  if (!degC!.includes('.7777')) expect(convert(exact(degC!), unit('degC'), unit('degF'))!.equals(exact(degF!))).toBe(true);
});

describe('differences are no temperatures', () => {
  test('36 °F as a difference are 20 K (NIST SP 811, B.8), and never 2.2', () => {
    expect(convert(exact('36'), differenceUnit(unit('degF')), unit('K'))!.toString()).toBe('20');
    expect(convert(exact('20'), unit('K'), unit('delta-degF'))!.toString()).toBe('36');
    expect(convert(exact('36'), unit('degF'), unit('K'))).toBeUndefined();
  });

  test('a difference converted is the difference of the converted', () => {
    const t = fc.integer({ min: -400, max: 2000 }).map((n) => Exact.of(n, 10));
    fc.assert(fc.property(t, t, (a, b) => {
      const [c, f] = [unit('degC'), unit('degF')];
      const first = convert(a.minus(b), differenceUnit(c), differenceUnit(f))!;
      expect(first.equals(convert(a, c, f)!.minus(convert(b, c, f)!))).toBe(true);
    }));
  });

  test('a difference of percentages is in points', () => {
    expect(differenceUnit(unit('%')).id).toBe('points');
    expect(differenceUnit(unit('W')).id).toBe('W');
  });
});

test('there and back again is where it began, for every pair of one dimension', () => {
  for (const a of units.values()) {
    for (const b of units.values()) {
      const there = convert(exact('12.5'), a, b);
      const same = a.id === b.id || (a.dimension === b.dimension && !['money', 'illuminance', 'score'].includes(a.dimension));
      expect(there !== undefined, `${a.id} to ${b.id}`).toBe(same);
      if (there) expect(convert(there, b, a)!.equals(exact('12.5')), `${a.id} to ${b.id}`).toBe(true);
    }
  }
});

describe('names', () => {
  test('no two units claim one spelling', () => {
    const owner = new Map<string, string>();
    for (const u of units.values()) {
      for (const name of new Set([u.id, ...u.also])) {
        expect(owner.get(name) ?? u.id, name).toBe(u.id);
        owner.set(name, u.id);
      }
    }
  });

  test('every unit is found by its id', () => {
    for (const u of units.values()) expect(findUnit(u.id)?.id).toBe(u.id);
  });

  test.each([
    ['°C', 'degC'], ['c', 'degC'], ['Degrees Celsius', 'degC'], ['K', 'K'], ['volts', 'V'], ['v', 'V'], ['mhz', 'MHz'], ['MHZ', 'MHz'], ['Ghz', 'GHz'],
    ['W', 'W'], ['Watts', 'W'], ['kw', 'kW'], ['RPM', 'rpm'], ['dba', 'dB(A)'], ['Mbps', 'Mbit/s'], ['MBps', 'MB/s'], ['l/h', 'L/h'], ['GPM', 'gal/min'], ['L/min', 'L/min'],
    ['megabytes', 'MB'], ['Gigabytes a second', 'GB/s'], ['fps/W', 'fps/W'], ['frames per watt', 'fps/W'], ['frames per joule', 'frame-count/J'], ['frames/Wh', 'frame-count/Wh'], ['°C/W', 'K/W'], ['K/W', 'K/W'], ['µs', 'us'], ['percentage points', 'points'], ['W/mK', 'W/(m*K)'], ['Nm', 'N*m'], ['Swiss francs', 'CHF'],
  ])('"%s" is %s', (name, id) => {
    expect(findUnit(name)?.id).toBe(id);
  });

  test.each(['MW', 'MV', 'MA', 'mb', 'mb/s', 'Mb/s', 'k', 'nm', 'n', 'bogus', '', '/', 'W/', '/W'])('"%s" is no unit, or one of which only the other case is used here', (name) => {
    expect(findUnit(name)).toBeUndefined();
  });
});

describe('precision of what was converted', () => {
  // NIST SP 811, B.7.2 (36 ft), and NIST LC 1137 (36 in, 40.1 in).
  test.each([
    ['36 ft', 'm', '11.0 m'], ['36 in', 'cm', '91 cm'], ['40.1 in', 'cm', '101.9 cm'],
  ])('%s is %s %s', (from, to, shown) => {
    const q = readQuantity(from);
    if ('why' in q) throw new Error(q.why);
    const converted = convertQuantity(q.quantity, unit(to))!;
    expect(show(converted.value, converted.unit, converted.decimals)).toBe(shown);
  });

  test.each([
    ['0.905 V', 'mV', '905 mV'], ['905 mV', 'V', '0.905 V'], ['2480 MHz', 'GHz', '2.480 GHz'], ['2.48 GHz', 'MHz', '2,480 MHz'], ['61 °C', 'degF', '142 °F'], ['61.4 °C', 'degF', '142.5 °F'],
    ['1.05 gal/min', 'L/min', '3.97 L/min'], ['90 s', 'min', '1.50 min'], ['4.25 L/min', 'gal/min', '1.123 gal/min'],
  ])('%s is %s %s', (from, to, shown) => {
    const q = readQuantity(from);
    if ('why' in q) throw new Error(q.why);
    const converted = convertQuantity(q.quantity, unit(to))!;
    expect(show(converted.value, converted.unit, converted.decimals)).toBe(shown);
  });
});

describe('a second unit beside the first', () => {
  const seconds = new Map([['degC', 'degF'], ['L/min', 'gal/min'], ['mm', 'in']]);
  test.each([
    ['degC', 'degF'], ['K', 'delta-degF'], ['L/min', 'gal/min'], ['L/h', 'gal/min'], ['K/W', 'delta-degF/W'], ['cm', 'in'], ['W', undefined], ['%', undefined], ['points', undefined], ['fps/W', undefined], ['degF', undefined],
  ])('%s has %s', (first, second) => {
    expect(secondUnit(unit(first!), seconds)?.id).toBe(second);
  });

  test('and an amount per watt is converted with its top', () => {
    expect(convert(exact('0.25'), perUnit(unit('K'), unit('W')), unit('delta-degF/W'))!.toString()).toBe('0.45');
    expect(convert(exact('0.25'), unit('K/W'), unit('fps/W'))).toBeUndefined();
  });
});
