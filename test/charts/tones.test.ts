// A colour that stands for a setup or a setting stands for it in every chart of the episode.
import { describe, expect, test } from 'vitest';
import { prepareChart } from '../../pipeline/charts/index.js';
import { tonesOf } from '../../pipeline/charts/tones.js';
import { colours, wide } from '../theme/stages.js';
import { cardFacts, place, pumpFacts } from './sample.js';

describe('the open bench and the closed case', () => {
  const prepared = (request: object) => prepareChart({ name: 'p', place, kind: 'bars', measure: 'frame_rate', ...request }, cardFacts(), wide).value!;
  test.each([
    ['bars', {}],
    ['bars, the second setup first', { setups: ['closed-case', 'open-bench'] }],
    ['one against another', { kind: 'tradeoff', text: 'temperature/core' }],
    ['one against another, the second first', { kind: 'tradeoff', text: 'temperature/core', setups: ['closed-case', 'open-bench'] }],
  ])('%s', async (_name, request) => {
    const picture = prepared(request);
    const { heading } = JSON.parse(picture.inputs) as { heading: { legend: { label: string; colour: string }[] } };
    expect(Object.fromEntries(heading.legend.map((l) => [l.label, l.colour]))).toEqual({ 'Open bench': 'muted', 'Closed case': 'plain' });
    const { svg } = await picture.draw();
    expect([colours.muted, colours.plain].map((hex) => svg.split(`fill="${hex}"`).length - 1)).toEqual([5, 5]);
  });
});

describe('of many', () => {
  const of = (...ids: string[]): Record<string, string> => Object.fromEntries(tonesOf(pumpFacts(), 'setup', ids));
  test('by the place in the record', () => expect(of('quarrow', 'orlo')).toEqual({ orlo: 'muted', quarrow: 'text' }));
  test('the fourth has the first colour again', () => expect(of('pennick', 'tessick')).toEqual({ pennick: 'plain', tessick: 'muted' }));
  test('where two meet, the later takes a free one and the others keep theirs', () => expect(of('tessick', 'orlo', 'pennick')).toEqual({ orlo: 'muted', pennick: 'plain', tessick: 'text' }));
});
