// Claims that the readings do not bear out, though every figure in them is right.
import { describe, expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { readQuantity, unit } from '../../pipeline/quantities/index.js';
import { Source } from '../../pipeline/places/index.js';
import { bareEpisode, readNames, readReadings } from '../../pipeline/records/index.js';

const names = `kind,id,spoken
setup,oak,the Oak
setup,elm,the Elm
setup,yew,the Yew
part,core,core
measure,temperature,temperature
measure,noise,noise
part,fan,fan
phase,load,under load
`;

function findings(runs: Record<string, string>, script: string, matters?: string): { says: string[]; disagree: string[] } {
  const rows = Object.entries(runs).flatMap(([at, values]) => {
    const [setup, what] = at.split(' ') as [string, string];
    const [measure, part] = what.split('/');
    return values.split(' ').map((v, i) => [setup, '', '', measure, part, 'load', i + 1, v, measure === 'noise' ? 'dB(A)' : 'degC'].join(','));
  });
  const readings = readReadings(new Source('readings.csv', `setup,setting,workload,measure,part,phase,run,value,unit\n${rows.join('\n')}\n`)).value!;
  const named = readNames(new Source('names.csv', names)).value!;
  const episode = bareEpisode(readings, named, readings[0]!.place);
  const least = matters === undefined ? undefined : readQuantity(matters, unit('K'));
  if (least && 'quantity' in least) episode.measures.set('temperature', { ...episode.measures.get('temperature')!, better: 'lower', matters: least.quantity });
  const facts = new Facts(episode);
  const { mentions, findings: all } = proof(new Source('script.md', script), facts);
  return {
    says: all.filter((f) => f.code === 'claim-unsupported').map((f) => `${f.severity} ${f.place.line}:${f.place.column} ${f.said}: ${f.message}`),
    disagree: mentions.filter((m) => m.verdict === 'disagrees').map((m) => m.text),
  };
}

const clear = { 'oak temperature/core': '60.0 60.1 60.2', 'elm temperature/core': '66.0 66.2 66.1' };
// Means of 61.7 and 63.3, which scatter by 2 and 2.5.
const open = { 'oak temperature/core': '60.0 61.0 64.0', 'elm temperature/core': '63.0 61.0 66.0' };
const once = { 'oak temperature/core': '60.0', 'elm temperature/core': '66.0' };

describe('a comparison with its number', () => {
  const script = (n: string): string => `The core of the Oak was ${n} degrees cooler than the core of the Elm.`;
  test('that the readings bear out', () => expect(findings(clear, script('6.0'))).toEqual({ says: [], disagree: [] }));
  test('that they do not is a warning, and agrees all the same', () => {
    const { says, disagree } = findings(open, script('1.7'));
    expect(disagree).toEqual([]);
    expect(says).toHaveLength(1);
    expect(says[0]).toMatch(/^warning 1:25 1\.7 degrees: Says 1\.7 degrees, and the readings do not tell the Oak from the Elm on .*temperature: −1\.7 ± \d\.\d K at 95 %; \d+ runs of each would probably tell\.$/i);
  });
  test('with the care that it needs is none', () => {
    expect(findings(open, 'The core of the Oak was 1.7 degrees cooler than that of the Elm, which is within the spread of the runs.').says).toEqual([]);
    expect(findings(open, 'The Oak was 1.7 degrees cooler than the Elm, which is too close to call.').says).toEqual([]);
  });
  test('on single runs is told once for the whole text', () => {
    const { says } = findings({ ...once, 'yew temperature/core': '70.0' }, `${script('6.0')} The Yew was 4.0 degrees warmer than the Elm. The Yew was 10.0 degrees warmer than the Oak.`);
    expect(says).toHaveLength(1);
    expect(says[0]).toContain('as do 2 other comparisons in this text');
  });
});

describe('a difference of no account', () => {
  // 0.5 apart and known to about 0.2: surely a difference, and surely less than the kelvin that matters.
  const small = { 'oak temperature/core': '60.0 60.1 60.2', 'elm temperature/core': '60.5 60.6 60.7' };
  // 0.8 apart and known to about 0.2: clear of nothing at 1 K, and less than the record says matters.
  const nearly = { 'oak temperature/core': '60.0 60.1 60.2', 'elm temperature/core': '60.9 60.9 60.9' };
  const half = 'The core of the Oak was 0.5 degrees cooler than the core of the Elm';
  const more = 'The core of the Oak was 0.8 degrees cooler than the core of the Elm';
  test('told with its number is a warning, and agrees all the same', () => {
    const { says, disagree } = findings(small, `${half}.`);
    expect(disagree).toEqual([]);
    expect(says.join()).toMatch(/^warning 1:25 0\.5 degrees: .*the Oak and the Elm differ by on .*temperature is too small to matter: −0\.5\d* ± 0\.\d+ K at 95 %, all of it within the 1\.0 K that matters\.$/);
  });
  test('not surely so, and smaller than the record says matters', () => {
    expect(findings(nearly, `${more}.`, '1 K').says.join()).toMatch(/too small to matter: .*which leaves out zero and is less than the 1\.0 K that matters\.$/);
    expect(findings(nearly, `${more}.`).says).toEqual([]);
    expect(findings(nearly, `${more}.`, '0.2 K').says).toEqual([]);
  });
  test('a winner, and one without a number', () => {
    const rest = { ...nearly, 'yew temperature/core': '80.0 80.1 80.2' };
    expect(findings(rest, 'The coolest of the three is the Oak.', '1 K').says.join()).toMatch(/Says coolest, and .* too small to matter/);
    expect(findings(rest, 'The Oak ran cooler than the Elm.', '1 K').says.join()).toMatch(/too small to matter/);
    expect(findings(rest, 'The Oak ran hotter than the Elm.', '1 K').says.join()).toMatch(/the other way round/);
  });
  test.each([
    `${half}, which is within what matters.`, `${half}: no difference worth having.`, `${half}, and you won't notice.`, `${half}. You will never notice that.`, `${half}, too small to matter.`,
    `${half}, by less than matters.`, `${half}, which is next to nothing.`, `${half}, and I would call that a draw.`, 'The core of the Oak was a mere 0.5 degrees cooler than the core of the Elm.', 'The core of the Oak was less than 0.6 degrees cooler than the core of the Elm.',
  ])('of which the script says so itself: %s', (script) => expect(findings(small, script)).toEqual({ says: [], disagree: [] }));
  test('what is said further on, or of another number, is no excuse', () => {
    expect(findings(small, `${half}. The core of the Elm was 60.6 degrees, which is worth knowing. You won't notice.`).says).toHaveLength(1);
  });
});

describe('a winner', () => {
  test.each([
    ['borne out', clear, 0],
    ['not borne out', open, 1],
  ])('%s', (_what, runs, n) => expect(findings({ ...runs, 'yew temperature/core': '80.0 80.1 80.2' }, 'The coolest of the three is the Oak.').says).toHaveLength(n));
});

describe('a comparison without a number', () => {
  test.each<[string, Record<string, string>, string, RegExp | undefined]>([
    ['borne out', clear, 'The Oak ran cooler than the Elm.', undefined],
    ['not borne out', open, 'The Oak ran cooler than the Elm.', /cooler than the Elm: .*do not tell the Oak from the Elm/i],
    ['the other way round', clear, 'The Oak ran hotter than the Elm.', /the other way round/],
    ['asked', clear, 'Was the Oak hotter than the Elm?', undefined],
    ['denied', open, 'The Oak was not cooler than the Elm.', undefined],
    ['supposed', open, 'If the Oak is cooler than the Elm, buy it.', undefined],
    ['of another measure than any that was read', clear, 'The Oak is quieter than the Elm.', undefined],
    ['a win not borne out', open, 'The Oak wins on core temperature.', /do not tell the Oak from the Elm/],
    ['a win borne out', clear, 'The Oak wins on core temperature.', undefined],
    ['a win of the other', clear, 'The Elm wins on core temperature.', /the other way round/],
    ['beats the other, not borne out', open, 'The Oak beats the Elm on core temperature.', /do not tell the Oak from the Elm/],
    ['beats the other, borne out', clear, 'The Oak beats the Elm on core temperature.', undefined],
    ['wins in what was not measured', open, 'The Oak wins on looks.', undefined],
    ['of a measure named', { ...clear, 'oak noise/fan': '30.0 33.0 31.0', 'elm noise/fan': '31.0 34.0 32.5' }, 'The Oak is quieter than the Elm.', /do not tell the Oak from the Elm on fan noise/i],
  ])('%s', (_what, runs, script, says) => {
    const found = findings(runs, script).says;
    if (says) expect(found.join('\n')).toMatch(says);
    else expect(found).toEqual([]);
  });
});
