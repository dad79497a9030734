// Names and figures that are fit to be said: nouns for quantities, the phase of what was noted once, ratios "to one".
import { describe, expect, test } from 'vitest';
import { mapOf, measure, named, product, said, setting, stock } from './episodes.js';

const called = (id: string, ...spoken: string[]) => ({ ...measure(id), spoken, name: spoken[0]! });

describe('what a quantity is called', () => {
  const one = (measures: ReturnType<typeof called>, part: ReturnType<typeof named>, unit: string) => said(`a/b/c/${measures.id}/${part.id}/load: 60 60 ${unit}`, { measures: mapOf(measures), parts: mapOf(part) });
  test('by no verb', () => {
    expect(one(called('power', 'watts', 'takes'), named('wall', 'the wall'), 'W')).toContain('Wall power was sixty watts under load.');
    expect(one(called('voltage', 'starts at'), named('fan', 'the fan'), 'V')).toContain('Fan voltage was sixty volts under load.');
  });
  test('a draw is none', () => expect(one(called('power', 'draw'), named('wall', 'the wall'), 'W')).toContain('Wall draw was sixty watts under load.'));
  test('not twice where the part says it', () => expect(one(called('duration', 'time'), named('runtime', 'runtime'), 'min')).toContain('The runtime was sixty minutes under load.'));
  test('of several, by one of them', () => expect(one(called('noise', 'noise'), named('fan', 'the fans', 'fan'), 'dB(A)')).toContain('Fan noise was sixty decibels under load.'));
  test('by no unit', () => expect(one(called('ratio', 'to one'), named('contrast', 'contrast'), ':1')).toContain('The contrast ratio was sixty to one under load.'));
});

describe('ratios to one', () => {
  const setups = mapOf(product('ash', 'the Ash'), product('birch', 'the Birch'), product('cedar', 'the Cedar'));
  const measures = mapOf(measure('contrast', 'higher'));
  test('of a field, without what lies between them', () => {
    const all = said('ash///contrast/screen/load: 1350 1352 :1\nbirch///contrast/screen/load: 2940 2940 :1\ncedar///contrast/screen/load: 990 992 :1', { setups, measures, parts: mapOf(named('screen', 'the screen')) });
    expect(all).toContain('Under load, the Ash had the second highest screen contrast of the three, at one thousand three hundred fifty-one to one.');
    expect(all).toContain('Under load, the median screen contrast was one thousand three hundred fifty-one to one.');
    expect(all.join(' ')).not.toMatch(/spread|above|below/);
  });
  test('between settings, in percent', () => {
    expect(said('ash/stock//contrast/screen/load: 1000 1000 :1\nash/vivid//contrast/screen/load: 820 820 :1', { setups, settings: mapOf(stock, setting('vivid', 'other', 'the vivid mode')), measures, parts: mapOf(named('screen', 'the screen')) }))
      .toContain('With the vivid mode, the screen contrast under load was eight hundred twenty to one, eighteen percent lower than at stock.');
  });
});

describe('what was noted once', () => {
  const lamps = (lines: string) => said(lines, { setups: mapOf(product('ash', 'the Ash'), product('birch', 'the Birch'), product('cedar', 'the Cedar')), parts: mapOf(named('wall', 'the wall'), named('run', 'the run')), measures: mapOf(measure('power'), measure('duration', 'higher')) });
  test('its phase is said where another was read', () => {
    const all = lamps('ash///power/wall/standby: = 0.3 W\nbirch///power/wall/standby: = 0.9 W\ncedar///power/wall/standby: = 0.5 W\nash///power/wall/load: 20 20 W\nbirch///power/wall/load: 24 24 W\ncedar///power/wall/load: 31 31 W');
    expect(all).toContain('During standby, the Birch had the highest wall power of the three, at zero point nine watts, each read once.');
  });
  test('a promise is no result beside what was read', () => {
    expect(lamps('ash///duration/run/claimed: = 90 min\nbirch///duration/run/claimed: = 60 min\ncedar///duration/run/claimed: = 40 min\nash///duration/run/load: 78 78 min\nbirch///duration/run/load: 61 61 min\ncedar///duration/run/load: 37 37 min').join(' ')).not.toContain('ninety minutes');
  });
});
