// One kind of sentence after the other, each against words written down by hand beforehand.
import { describe, expect, test } from 'vitest';
import { readQuantity } from '../../pipeline/quantities/index.js';
import { factsOf } from '../facts/episode.js';
import type { Setup } from '../../pipeline/records/index.js';
import { arrangement, bench, box, mapOf, measure, named, place, product, said, sayings, setting, stock, undervolt } from './episodes.js';

const quantity = (text: string) => {
  const q = readQuantity(text);
  if ('why' in q) throw new Error(q.why);
  return q.quantity;
};

describe('rises', () => {
  const at = (idle: string, load: string) => said(`bench/stock//temperature/core/idle: ${idle} °C\nbench/stock/scene/temperature/core/load: ${load} °C`, {}, {}, 'idle');
  test('up, with both ends', () => expect(at('38 38 39', '67 67 68')).toEqual(['The core rose twenty-nine degrees, from thirty-eight at idle to sixty-seven under load.']));
  test('by less than matters', () => expect(at('40.0 40.1 40.2', '40.5 40.6 40.7')).toEqual(['The core rose zero point five degrees, from forty point one at idle to forty point six under load, which is too little to matter.']));
  test('by one', () => expect(at('40 40 40', '41 41 41')).toEqual(['The core rose one degree, from forty at idle to forty-one under load.']));
  test('down', () => expect(at('70 70 70', '61 61 61')).toEqual(['The core fell nine degrees, from seventy at idle to sixty-one under load.']));
  test('not at all', () => expect(at('40 40 40', '40 40 40')).toEqual(['The core did not change from idle: it stayed at forty degrees under load.']));
  test('from below zero', () => expect(at('-5 -5 -5', '3 3 3')).toEqual(['The core rose eight degrees, from minus five at idle to three under load.']));
  test('from nothing, the number is said once', () => {
    expect(said('bench/stock//fan_speed/fan/idle: 0 0 0 rpm\nbench/stock/scene/fan_speed/fan/load: 1500 1503 1506 rpm', { parts: mapOf(named('fan', 'the fan')) }, {}, 'idle')).toEqual(['The fan speed rose from zero at idle to one thousand five hundred three revolutions per minute under load.']);
  });
  // 67.5 − 38.4 = 29.1, but 68 − 38 = 30: one end alone, so that nobody can subtract.
  test('where the rounded ends would give another rise', () => {
    expect(said('bench/stock//temperature/core/idle: 38 38 39 39 38 °C\nbench/stock/scene/temperature/core/load: 67 68 °C', {}, {}, 'idle')).toEqual(['The core rose twenty-nine degrees from idle and reached sixty-eight degrees under load.']);
  });
});

describe('values', () => {
  test('two parts, each with its figure, the unit once', () => {
    expect(said('bench/stock/scene/temperature/core/load: 67 67 68 °C\nbench/stock/scene/temperature/hotspot/load: 81 81 82 °C', {}, {}, 'hotspot')).toEqual(['The core reached sixty-seven degrees under load and the hotspot eighty-one.']);
  });
  test('four parts in two breaths', () => {
    const lines = ['a', 'b', 'c', 'd'].map((p, i) => `bench/stock/scene/temperature/${p}/load: ${60 + i} °C`).join('\n');
    expect(said(lines, { parts: mapOf(...['a', 'b', 'c', 'd'].map((p) => named(p, `the ${p} sensor`))) }, {}, 'sensor')).toEqual([
      'The a sensor reached sixty degrees under load and the b sensor sixty-one.',
      'The c sensor reached sixty-two degrees under load and the d sensor sixty-three.',
    ]);
  });
  test('after a name that ends in a number, figures stand apart from the names', () => {
    const lines = ['one', 'two'].map((p, i) => `bench/stock/scene/temperature/${p}/load: ${40 + i} °C`).join('\n');
    expect(said(lines, { parts: mapOf(named('one', 'drive one'), named('two', 'drive two')) }, {}, 'drive')).toEqual(['The drive one and the drive two reached forty and forty-one degrees under load, respectively.']);
  });
  test('noughts after the point are not said, from two hundred on no decimals are', () => {
    expect(said('bench/stock/scene/power/board/load: 248.3 248.1 247.6 W')).toContain('Board power was two hundred forty-eight watts under load.');
    expect(said('bench/stock/scene/frame_rate/average/load: 96.0 96.1 95.9 fps')).toContain('The average frame rate was ninety-six frames per second under load.');
  });
  test('volts keep their noughts', () => expect(said('bench/stock/scene/voltage/core/load: 0.90 0.90 V')).toContain('Core voltage was zero point nine zero volts under load.'));
  test('one of a unit', () => expect(said('bench/stock/scene/power/board/load: 1 1 W')).toContain('Board power was one watt under load.'));
});

describe('limits', () => {
  // 248 of 250 is 99.2 %; 355 of 450 is 79 %, 415 of 450 is 92 %: common practice, no published source.
  test.each([
    ['248.0', '250', 'Board power under load was two hundred forty-eight watts, which is ninety-nine percent of its limit of two hundred fifty watts.'],
    ['355', '450', 'Board power under load was three hundred fifty-five watts, which is seventy-nine percent of its limit of four hundred fifty watts.'],
    ['415', '450', 'Board power under load was four hundred fifteen watts, which is ninety-two percent of its limit of four hundred fifty watts.'],
    ['420', '450', 'Board power under load was four hundred twenty watts, which is ninety-three percent of its limit of four hundred fifty watts.'],
    ['697', '700', 'Board power under load was six hundred ninety-seven watts, which is ninety-nine point six percent of its limit of seven hundred watts.'],
    ['9999', '10000', 'Board power under load was nine thousand nine hundred ninety-nine watts, which is ninety-nine point nine nine percent of its limit of ten thousand watts.'],
    ['99999', '100000', 'Board power under load was ninety-nine thousand nine hundred ninety-nine watts, which is just under one hundred percent of its limit of one hundred thousand watts.'],
    ['700', '700', 'Board power under load was seven hundred watts, which is one hundred percent of its limit of seven hundred watts.'],
  ])('%s W of %s W', (power, limit, text) => expect(said(`bench/stock/scene/power/board/load: ${power} W\n/stock//power/board/limit: = ${limit} W`)).toContain(text));
  test.each([
    ['97', 'The hotspot under load was eight degrees below its limit of one hundred five.'],
    ['106', 'The hotspot under load was one degree above its limit of one hundred five.'],
    ['105', 'The hotspot under load was right at its limit of one hundred five degrees.'],
  ])('a temperature of %s has room to its limit and no share of it', (t, text) => {
    const all = said(`bench/stock/scene/temperature/hotspot/load: ${t} °C\n///temperature/hotspot/limit: = 105 °C`);
    expect(all).toContain(text);
    expect(all.join(' ')).not.toContain('percent');
  });
  test('a target is set beside what was measured', () => {
    expect(said('bench/undervolt/scene/voltage/core/load: 0.901 0.901 V\n/undervolt//voltage/core/target: = 0.900 V')).toContain('Core voltage under load was zero point nine zero one volts, against its target of zero point nine zero zero volts.');
  });
  test('what a setting allows', () => {
    const readings = (limit: string) => `bench/stock/scene/power/board/load: 249 W\nbench/undervolt/scene/power/board/load: 199 W\n/stock//power/board/limit: = 250 W\n/undervolt//power/board/limit: = ${limit} W`;
    const change = { settings: mapOf(stock, undervolt) };
    expect(said(readings('200'), change)).toContain('With the undervolt, the limit on board power was two hundred watts, which is eighty percent of the two hundred fifty watts allowed at stock.');
    expect(said(readings('275'), change)).toContain('With the undervolt, the limit on board power was two hundred seventy-five watts, which is ten percent more than the two hundred fifty watts allowed at stock.');
  });
});

describe('comparisons', () => {
  const settings = mapOf(stock, undervolt);
  const pair = (what: string, a: string, b: string, measures = mapOf(measure('temperature', 'lower'))) => said(`bench/stock/scene/${what}/load: ${a}\nbench/undervolt/scene/${what}/load: ${b}`, { settings, measures }, {}, 'With the undervolt');
  // 415 to 355 is 60 W or 14 % (of 415, not of 355, which would be 17): common practice, no published source.
  test('with the base named and the percent taken of it', () => {
    expect(pair('power/board', '415 415 415 W', '355 355 355 W')).toContain('With the undervolt, board power under load was three hundred fifty-five watts, sixty watts lower than at stock, or fourteen percent less.');
  });
  test('never a percent of a temperature', () => {
    expect(pair('temperature/core', '78 78 78 °C', '69 69 69 °C')).toContain('With the undervolt, the core under load was nine degrees cooler than at stock, at sixty-nine degrees.');
  });
  test('nor of decibels', () => expect(pair('noise/board', '42.8 42.8 dB(A)', '37.3 37.3 dB(A)').join(' ')).toContain('was five point five decibels quieter than at stock, at thirty-seven point three decibels.'));
  test('between percentages lie points', () => {
    expect(pair('duty/fan', '67 67 67 %', '53 53 53 %')).toContain('With the undervolt, fan duty under load was fifty-three percent, fourteen percentage points lower than at stock.');
  });
  test('equal', () => expect(pair('power/board', '100 100 W', '100 100 W')).toContain('With the undervolt, board power under load was the same as at stock, at one hundred watts.'));
  test('runs that overlap decide nothing', () => {
    expect(pair('frame_rate/average', '96.1 98.6 96.2 fps', '95.1 95.8 96.9 fps')).toContain('With the undervolt, the average frame rate under load was about one frame per second lower than at stock, which is within the spread of the runs and too close to call.');
  });
  test('runs that scatter more than the difference decide nothing', () => {
    expect(pair('power/board', '100.0 104.0 W', '99.0 99.9 W')).toContain('With the undervolt, board power under load was about two point six watts lower than at stock, which is within the spread of the runs and too close to call.');
  });
  test('a difference that rounds to nothing is not told', () => {
    expect(pair('power/board', '90 110 110 W', '91 110 110 W')).toContain('With the undervolt, whether board power under load was higher or lower than at stock is too close to call: the runs overlap.');
  });
  test('less than what matters', () => {
    const measures = mapOf(measure('temperature', 'lower', { matters: quantity('1 K') }));
    expect(pair('temperature/core', '70.0 70.0 °C', '69.4 69.4 °C', measures)).toContain('With the undervolt, the core under load was about the same as at stock: the difference is too small to matter.');
  });
  test('told apart, and by less than the record says matters', () => {
    const measures = mapOf(measure('temperature', 'lower', { matters: quantity('1 K') }));
    const about = 'With the undervolt, the core under load was about the same as at stock: the difference is too small to matter';
    expect(pair('temperature/core', '70.0 70.1 70.2 °C', '69.2 69.2 69.3 °C', measures)).toContain(`${about}.`);
    expect(pair('temperature/core', '70.0 °C', '69.2 °C', measures)).toContain(`${about}, in single runs.`);
  });
  test('single runs are told as such', () => {
    expect(pair('power/board', '415 W', '355 W')).toContain('With the undervolt, board power under load was three hundred fifty-five watts, sixty watts lower than at stock, or fourteen percent less, in single runs.');
    expect(pair('power/board', '415 W', '355 355 W').join(' ')).toContain('or fourteen percent less, not all of it from repeated runs.');
  });
  test('a difference that rounding would contradict stands alone', () => {
    // 68.4 − 59.5 = 8.9, shown 9, but 68 − 60 = 8.
    expect(pair('temperature/core', '68 68 69 69 68 °C', '59 60 °C')).toContain('With the undervolt, the core under load was nine degrees cooler than at stock.');
  });
  test('two setups', () => {
    expect(said('bench/stock/scene/temperature/core/load: 67 67 67 °C\nbox/stock/scene/temperature/core/load: 78 78 78 °C', { setups: mapOf(bench, box) }, {}, 'In the box')).toContain('In the box, the core under load was eleven degrees warmer than on the bench, at seventy-eight degrees.');
  });
});

describe('rankings', () => {
  const setups = mapOf(product('ash', 'the Ash'), product('birch', 'the Birch'), product('cedar', 'the Cedar'), product('dogwood', 'the Dogwood'));
  const field = (values: Record<string, string>, better: 'lower' | 'higher') => said(Object.entries(values).map(([id, v]) => `${id}/stock/heat/flow/loop/load: ${v} L/min`).join('\n'), { setups, measures: mapOf(measure('flow', better)), parts: mapOf(named('loop', 'the loop')) });
  const four = { ash: '4.18 4.18', birch: '2.61 2.61', cedar: '4.55 4.55', dogwood: '3.05 3.05' };
  test('from the better end, with the gap to the first', () => {
    const all = field(four, 'higher');
    expect(all).toContain('Under load, the Cedar had the highest loop flow of the four, at four point five five litres per minute.');
    expect(all).toContain('Under load, the Ash had the second highest loop flow of the four, at four point one eight litres per minute, zero point three seven litres per minute below the Cedar.');
    expect(all).toContain('Under load, the Birch had the lowest loop flow of the four, at two point six one litres per minute.');
  });
  test('the other way round where lower is better', () => expect(field(four, 'lower')).toContain('Under load, the Dogwood had the second lowest loop flow of the four, at three point zero five litres per minute, zero point four four litres per minute above the Birch.'));
  // (3.05 + 4.18) / 2 = 3.615
  test('the median and the width', () => {
    expect(field(four, 'higher')).toContain('Under load, the median loop flow was three point six two litres per minute.');
    expect(field(four, 'higher')).toContain('Under load, the spread in loop flow from top to bottom was one point nine four litres per minute.');
  });
  // The median of three is the Birch: 4.55 − 3.05 = 1.50; of 3.00 and 4.10 the mean is 3.55, with far too much scatter to lie above it.
  test('how far the ends lie from the median is said where the runs can tell it', () => {
    const from = (cedar: string) => field({ ash: '2.61 2.61', birch: '3.05 3.05', cedar }, 'higher').filter((s) => s.includes(' the median') && s.includes('the Cedar'));
    expect(from('4.55 4.55')).toEqual(['Under load, loop flow with the Cedar was one point five litres per minute above the median.']);
    expect(from('3.00 4.10')).toEqual([]);
    expect(from('4.55')).toEqual(['Under load, loop flow with the Cedar was one point five litres per minute above the median, not all of it from repeated runs.']);
  });
  test('no place is given to what is ahead by less than matters', () => {
    const all = said('ash/stock/heat/flow/loop/load: 2.91 2.97 2.94 L/min\nbirch/stock/heat/flow/loop/load: 2.88 2.83 2.87 L/min\ncedar/stock/heat/flow/loop/load: 2.72 2.69 2.73 L/min', { setups, measures: mapOf(measure('flow', 'higher', { matters: quantity('0.1 L/min') })), parts: mapOf(named('loop', 'the loop')) });
    expect(all.filter((s) => /Ash|Birch/.test(s) && /est loop flow/.test(s))).toEqual([]);
    expect(all).toContain('Under load, the Ash and the Birch are about level on loop flow, at two point nine four and two point eight six litres per minute: the difference is too small to matter.');
    expect(all).toContain('Under load, the Cedar had the lowest loop flow of the three, at two point seven one litres per minute.');
  });
  test('a field that is narrower than what matters', () => {
    const all = said('ash/stock/heat/flow/loop/load: 2.91 2.91 2.91 L/min\nbirch/stock/heat/flow/loop/load: 2.88 2.88 2.88 L/min\ncedar/stock/heat/flow/loop/load: 2.86 2.86 2.86 L/min', { setups, measures: mapOf(measure('flow', 'higher', { matters: quantity('0.1 L/min') })), parts: mapOf(named('loop', 'the loop')) });
    expect(all).toContain('Under load, the spread in loop flow from top to bottom was zero point zero five litres per minute, which is too small to matter.');
  });
  test('equals share a place', () => {
    expect(field({ ...four, ash: '4.55 4.55' }, 'higher')).toContain('Under load, loop flow was the same with the Ash and with the Cedar: four point five five litres per minute.');
  });
  test('no place is given where the runs overlap', () => {
    const all = field({ ...four, ash: '4.50 4.58' }, 'higher');
    expect(all).toContain('Under load, the Cedar and the Ash are too close to call on loop flow, at four point five five and four point five four litres per minute: the runs overlap.');
    expect(all.join(' ')).not.toContain('had the highest');
  });
  test('without nouns each figure stands with its manner', () => {
    const flows = said('a/stock/heat/flow/loop/load: 4.50 4.58 L/min\nb/stock/heat/flow/loop/load: 4.55 4.55 L/min\nc/stock/heat/flow/loop/load: 2.61 2.61 L/min', { setups: mapOf(arrangement('a', 'on mains'), arrangement('b', 'on battery'), arrangement('c', 'on the dock')), measures: mapOf(measure('flow', 'higher')), parts: mapOf(named('loop', 'the loop')) });
    expect(flows).toContain('Under load, loop flow was four point five five litres per minute on battery and four point five four on mains, which is too close to call: the runs overlap.');
  });
  test('what all were brought to on purpose is not ranked', () => {
    const flow = (target: string) => said(`${Object.entries(four).map(([id, v]) => `${id}/stock/heat/flow/loop/load: ${v} L/min`).join('\n')}${target}`, { setups, measures: mapOf(measure('flow', 'higher')), parts: mapOf(named('loop', 'the loop')) }).join(' ');
    expect(flow('')).toContain('spread in loop flow');
    expect(flow('\n/stock//flow/loop/target: = 3 L/min')).not.toMatch(/spread in|median|had the highest/);
  });
  // 4.546 and 4.554 are both shown as 4.55: the same number is not said twice, respectively.
  test('two that are too close and shown alike have their figure once', () => {
    expect(field({ ...four, ash: '4.54 4.55 4.55', cedar: '4.55 4.55 4.56' }, 'higher').join('\n')).toContain('Under load, loop flow was four point five five litres per minute both with the Cedar and with the Ash: the difference is too small to matter.');
  });
});

describe('conditions', () => {
  test('counts, runs, room', () => {
    const all = said('bench/stock/s/temperature/core/load: 67 67 68 °C\nbox/stock/s/temperature/core/load: 78 78 78 °C\nbench/undervolt/s/temperature/core/load: 60 60 60 °C\nbench/stock/s/temperature/room/load: 22.1 22.1 °C\nbox/stock/s/temperature/room/load: 22.9 22.9 °C', { setups: mapOf(bench, box), settings: mapOf(stock, undervolt) });
    expect(all.slice(0, 3)).toEqual(['We tested two setups at two settings.', 'Every figure is the mean of three runs.', 'The room averaged between twenty-two point one and twenty-two point nine degrees.']);
  });
  test('runs that differ, and single ones', () => {
    expect(said('a/b/c/power/board/load: 1 2 3 W\na/b/d/power/board/load: 1 2 W')).toContain('No figure is the mean of more than three runs.');
    expect(said('a/b/c/power/board/load: 5 W')).toContain('Every figure comes from a single run.');
  });
  test('a room that stayed the same', () => expect(said('a/b/c/temperature/core/load: 60 °C\na/b/c/temperature/room/load: 21 21 °C')).toContain('The room averaged twenty-one degrees.'));
});

test('over the room', () => expect(said('a/b/c/temperature/core/load: 67.0 67.0 °C\na/b/c/temperature/room/load: 21.5 21.5 °C')).toContain('The core was forty-five point five degrees over the room under load.'));

describe('per watt and per price', () => {
  // 96 frames at 240 W: 0.4 each.
  test('per watt of the one power there is', () => expect(said('a/b/c/frame_rate/average/load: 96 96 fps\na/b/c/power/board/load: 240 240 W')).toContain('The average frame rate came to zero point four frames per second per watt of board power under load.'));
  test('not where there are two powers to choose from', () => expect(said('a/b/c/frame_rate/average/load: 96 fps\na/b/c/power/board/load: 240 W\na/b/c/power/wall/load: 300 W').join(' ')).not.toContain('per watt'));
  test('per price, unless nobody could follow the figure', () => {
    const setups = (price: string) => mapOf({ ...product('a', 'the A'), price: { amount: quantity(price), place } });
    expect(said('a/b/c/frame_rate/average/load: 100 fps', { setups: setups('400 EUR') })).toContain('The average frame rate came to zero point two five frames per second per euro of the price of the A under load.');
    expect(said('a/b/c/frame_rate/average/load: 100 fps', { setups: setups('4000 EUR') }).join(' ')).not.toContain('euro');
  });
  test('not per price of a box that was tested beside a bench: what performs is the same in both', () => {
    const setups = mapOf<Setup>(bench, { ...product('box', 'the box'), price: { amount: quantity('119 EUR'), place } });
    expect(said('bench/b/c/frame_rate/average/load: 118 fps\nbox/b/c/frame_rate/average/load: 116 fps', { setups }).join(' ')).not.toContain('euro');
  });
});

describe('what to be open about', () => {
  const aside = (reason: string) => {
    const facts = factsOf('a/b/c/power/board/load: 240 241 190 W');
    facts.readings('a/b/c/power/board/load', { aside: true })[2]!.aside = { reason, place };
    return facts;
  };
  test('a run set aside, with its reason', () => {
    expect(sayings(aside('the window was open.'))).toContain('A run of board power under load was set aside and counts in no average: the window was open.');
    expect(sayings(aside('it fell to 3 watts'))).toContain('A run of board power under load was set aside and counts in no average.');
  });
  test('a result of an earlier episode', () => {
    expect(said('a/b/c/temperature/core/load: 66.4 °C', { quotes: [{ episode: 'other', fact: 'x', as: 'a/b/c/temperature/core/load', place }] })).toContain('The core temperature of sixty-six point four degrees under load is quoted from an earlier episode.');
  });
});

describe('forms', () => {
  const line = 'a/b/c/frequency/core/load: 2105 2105 MHz';
  test('digits', () => expect(said(line, {}, { form: 'digits' })).toContain('The core frequency was 2,105 megahertz under load.'));
  test('American words', () => expect(said(line)).toContain('The core frequency was two thousand one hundred five megahertz under load.'));
  test('British words', () => expect(said(line, {}, { british: true })).toContain('The core frequency was two thousand one hundred and five megahertz under load.'));
  test('a second unit, differences as differences', () => {
    const second = { secondUnits: new Map([['degC', 'degF']]) };
    const all = said('a/b//temperature/core/idle: 30 °C\na/b/c/temperature/core/load: 50 °C', second, { second: true, form: 'digits' });
    expect(all).toContain('The core rose 20 degrees, or 36 degrees Fahrenheit, from 30 at idle to 50 under load.');
  });
});

test('names that are only ever said as adverbials are not made the subject', () => {
  const settings = mapOf(setting('desk', 'other', 'on the desk'), setting('stand', 'other', 'on the stand'), setting('lap', 'other', 'on a lap'));
  const all = said('a/desk/g/temperature/skin/load: 47 47 °C\na/stand/g/temperature/skin/load: 43 43 °C\na/lap/g/temperature/skin/load: 49 49 °C', { settings, parts: mapOf(named('skin', 'the skin')), setups: mapOf(arrangement('a')) });
  expect(all).toContain('Under load, skin temperature was the lowest of the three settings on the stand, at forty-three degrees.');
  expect(all.join(' ')).not.toMatch(/on the \w+ had/);
});
