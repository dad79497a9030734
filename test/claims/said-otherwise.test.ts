// What is compared with what, said in other ways: margins to a limit, names that begin with a preposition, a state that a
// change sets out from, the median of the others, a room put down with the plan. Each pair is a true sentence and a false one.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [];
const things: [string, number, number, number][] = [['alder', 71, 36, 41], ['beech', 78, 44, 44.5], ['cedar', 66, 29, 38], ['dogwood', 83, 51, 47]];
for (const [id, hot, noise, watts] of things) for (const [where, more] of [['desk', 0], ['cupboard', 9]] as const) {
  rows.push([id, where, 'quarry', 'temperature', 'core', 'load', hot + more, 'degC', 0.5], [id, where, 'quarry', 'noise', 'blower', 'load', noise + more / 3, 'dB(A)', 0.2], [id, where, 'quarry', 'power', 'board', 'load', watts - more / 10, 'W', 0.2], [id, where, '', 'temperature', 'core', 'idle', 33 + more / 3, 'degC', 0.5]);
  rows.push([id, where, 'quarry', 'fan_speed', 'blower', 'load', 1500 + 10 * hot + 40 * more, 'rpm', 5]);
}
for (const [id, , , watts] of things) rows.push([id, '', '', 'mass', 'board', 'weighed', watts * 20, 'g']);
rows.push(['plan', '', '', 'temperature', 'room', 'load', 21, 'degC', 0.1], ['plan', '', '', 'temperature', 'core', 'limit', 90, 'degC']);
const names = `kind,id,spoken
setup,alder,the Alder
setup,beech,the Beech
setup,cedar,the Cedar
setup,dogwood,the Dogwood
setup,plan,my rule
setting,desk,on the desk;the desk
setting,cupboard,in the cupboard;the cupboard
workload,quarry,Quarry
part,core,core
part,blower,blower
part,board,board
part,room,the room
measure,temperature,temperature
measure,noise,noise
measure,power,power
measure,mass,mass
measure,fan_speed,fan speed
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), facts).mentions.filter((m: Verdict) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`);

describe.each([
  ['who gives it', 'In the cupboard in Quarry the Dogwood makes 54 decibels.\nAnd what does the desk give you? From the Dogwood, N decibels less noise.', '3', '5'],
  ['the median goes up', '## In the cupboard in Quarry\nThe noise runs from 32 to 54 decibels, so the median has gone up by N, to 43.', '3', '4'],
  ['a figure and then how far above the room', 'In the cupboard in Quarry the core of the Beech is bad, it\'s N, or 66 degrees above the room.', '87', '78'],
  ['who came first, against the median', '## On the desk in Quarry\nThe Cedar is first with 29 decibels, then the Alder with 36, the Beech with 44 and the Dogwood with 51. That puts the median at 40; the winner is N quieter than that.', '11', '12'],
  ['where something turns', 'On the desk in Quarry the blower of the Cedar turns at N behind its grille.', '2,160', '2,260'],
  ['slower of what turns', 'On the desk in Quarry the blower of the Dogwood turns at 2,330 rpm and that of the Cedar at 2,160, 7 percent N.', 'slower', 'faster'],
  ['a figure in one against another', '## In Quarry\nThe Dogwood costs N decibels on the desk against 54 in the cupboard.', '51', '58'],
  ['two pairs with the same ends', '## In Quarry\nWith the Beech it goes from 44 decibels on the desk up to 47 in the cupboard, and with the Dogwood from 51 to N.', '54', '58'],
  ['a state set out from', 'On the desk in Quarry the Beech runs at 78 degrees.\nFrom idle, its core warmed up by N degrees.', '45', '35'],
  ['up on a name that begins with a preposition', 'In the cupboard the Beech answers with 47 decibels, N up on the desk.', '3', '5'],
  ['within so much of a thing, which stays what it is compared with', 'In the cupboard the Alder keeps its power within a watt of the desk, but the noise is N decibels up.', '3', '5'],
  ['in hand is so to the limit', 'My rule says 90 degrees for the core.\nIn the cupboard the Beech passes with just N degrees in hand.', '3', '6'],
  ['a rule passed by so much', 'In the cupboard the core of the Dogwood reaches 92 degrees and breaks my rule by N degrees.', '2', '6'],
  ['above the median of the others', 'On the desk in Quarry the core of the Dogwood is at 83 degrees, which is N above the median of the other three.', '12', '14'],
  ['over a room that stands with the plan', 'Over room temperature the core of the Cedar stands at N degrees on the desk in Quarry.', '45', '66'],
  ['so many more of a unit', 'In Quarry on the desk the blower of the Dogwood turns at 2,330 rpm, so N more rpm than that of the Cedar.', '170', '270'],
])('%s', (_, text, right, wrong) => {
  test('right', () => expect(verdicts(text.replace('N', right)).filter((v) => !v.endsWith(': agrees'))).toEqual([]));
  test('wrong', () => expect(verdicts(text.replace('N', wrong)).some((v) => v.endsWith('disagrees'))).toBe(true));
});

describe('no alarm', () => {
  test.each([
    'In the cupboard the core of the Alder climbs to 80 degrees.',
    'The core of the Dogwood, at 92 degrees in the cupboard, breaks my rule.',
    'On the desk the noise of the Beech is 44 decibels, a bit short of the 50 I allow.',
    'Degrees of the Alder divided by those of the Cedar on the desk come to 1.08.',
  ])('%s', (text) => expect(verdicts(text).filter((v) => v.endsWith('disagrees'))).toEqual([]));
});

describe('a rate said without its time', () => {
  const loop = factsOf([['fir', '', '', 'flow', 'loop', 'load', 2.31, 'L/min', 0.02], ['gorse', '', '', 'flow', 'loop', 'load', 1.67, 'L/min', 0.02]], 'kind,id,spoken\nsetup,fir,the Fir\nsetup,gorse,the Gorse\nmeasure,flow,flow\npart,loop,loop\n');
  const of = (text: string): string[] => proof(new Source('script.md', text), loop).mentions.map((m) => `${m.text}: ${m.verdict}`);
  test('right', () => expect(of('The flow of the Fir is 2.31 litres and that of the Gorse 1.67.')).toEqual(['2.31 litres: agrees', '1.67: agrees']));
  test('wrong', () => expect(of('The flow of the Fir is 2.51 litres.')).toEqual(['2.51 litres: disagrees']));
  test('what is poured is no flow', () => expect(of('I poured 2 litres of water into the Fir.')).toEqual(['2 litres: not-a-claim']));
});

describe.each([
  ['names behind a list are of all of it', 'In Quarry: 71 and 80 degrees for the core of the Alder on the desk and in the cupboard.\nOn the desk the noise of the Alder and the Beech is 36 and 44 decibels; in the cupboard it is N and 47.', '39', '42'],
  ['what is taken off a part', 'In Quarry on the desk, going from the Dogwood to the Cedar takes N degrees off the core.', '17', '15'],
  ['up on another setting', 'In the cupboard in Quarry the noise of the Beech is 47 decibels, up N on the desk.', '3', '5'],
  ['of what the share is, is named', 'On the desk the board of the Alder draws 41 watts and that of the Dogwood 47. So the Alder saves you N percent of the power of the Dogwood.', '13', '19'],
])('%s', (_, text, right, wrong) => {
  test('right', () => expect(verdicts(text.replace('N', right)).filter((v) => !v.endsWith(': agrees'))).toEqual([]));
  test('wrong', () => expect(verdicts(text.replace('N', wrong)).some((v) => v.endsWith('disagrees'))).toBe(true));
});

test.each([
  'There is a finned board for the Alder, for 26 pounds.',
  'On the desk, with the meter half a metre from the Beech, the noise is 44 decibels.',
  'In the cupboard the core of the Alder is at 80 degrees, 2 beyond the 78 we call comfortable.',
])('no alarm: %s', (text) => expect(verdicts(text).filter((v) => v.endsWith('disagrees'))).toEqual([]));

describe('settings that cross two choices', () => {
  const rows2: Row[] = [];
  for (const [place, extra] of [['bench', 0], ['case', 8]] as const) for (const [mode, hot] of [['stock', 80], ['limit', 68], ['tuned', 73]] as const) for (const [id, more] of [['ibex', 0], ['jackal', 5]] as const) rows2.push([id, `${place}-${mode}`, 'mill', 'temperature', 'core', 'load', hot + extra + more, 'degC', 0.2]);
  const crossed = factsOf(rows2, `kind,id,spoken
setup,ibex,the Ibex
setup,jackal,the Jackal
setting,bench-stock,stock on the bench
setting,bench-limit,the power limit on the bench
setting,bench-tuned,the tuning on the bench
setting,case-stock,stock in the case
setting,case-limit,the power limit in the case
setting,case-tuned,the tuning in the case
part,core,core
measure,temperature,temperature
workload,mill,the mill
`);
  const of = (text: string): string[] => proof(new Source('script.md', text), crossed).mentions.filter((m) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`);
  const text = (n: string): string => `## The power limit, on the bench\n\nThe core of the Ibex settles at ${n} degrees.`;
  test('each half names its own, and a heading may have a comma between', () => expect(of(text('68'))).toEqual(['68 degrees: agrees']));
  test('wrong', () => expect(of(text('66'))).toEqual(['66 degrees: disagrees']));
});

describe.each([
  ['against an extreme', 'In Quarry the loudest is the Dogwood in the cupboard, N decibels above the quietest.', '25', '21'],
  ['a thing with two names before, respectively', 'On the desk in Quarry the noise of the Alder is 36 and that of the Beech 44 decibels, so in the cupboard they are N and 3 decibels louder respectively.', '3', '6'],
  ['a figure behind what is compared with', 'In Quarry on the desk the blower of the Dogwood turns at 2,330 rpm, 8 percent more than the Cedar\'s N.', '2,160', '2,610'],
  ['a figure behind the thing that is placed', 'In Quarry the quietest is the Cedar on the desk, N decibels.', '29', '36'],
  ['what is done to a thing by a setting', 'In Quarry on the desk the noise of the Alder is 36 decibels. The cupboard costs the Alder N decibels.', '3', '5'],
  ['what is set beside another', 'In Quarry the core of the Alder is at 80 degrees in the cupboard. Set beside the desk it is N degrees hotter.', '9', '12'],
])('%s', (_, text, right, wrong) => {
  test('right', () => expect(verdicts(text.replace('N', right)).filter((v) => !v.endsWith(': agrees'))).toEqual([]));
  test('wrong', () => expect(verdicts(text.replace('N', wrong)).some((v) => v.endsWith('disagrees'))).toBe(true));
});

test('a percent taken of the wrong one of two figures is told with the right percent', () => {
  const [wrong] = proof(new Source('script.md', 'In Quarry on the desk the board power falls from 47 watts on the Dogwood to 41 watts on the Alder, which is 15 percent less.'), facts).mentions.filter((m) => m.verdict === 'disagrees');
  expect(wrong?.text).toBe('15 percent');
  expect(wrong?.recorded).toMatch(/13 %/);
});

test('what is taken back claims nothing', () => expect(verdicts('Last week we said 66 degrees for the core of the Alder. That was wrong. On the desk in Quarry it is 71 degrees.')).toEqual(['71 degrees: agrees']));

test('how many were bought is not on record', () => expect(verdicts('Three coolers were bought, and one was lent by a reader.').filter((v) => v.endsWith('disagrees'))).toEqual([]));

test('a word of a role gives way to the name of a workload that stands in it', () => {
  const loads = factsOf([['fir', '', 'full-load', 'power', 'board', 'load', 80, 'W', 0.2], ['fir', '', 'half-load', 'power', 'board', 'load', 45, 'W', 0.2]], 'kind,id,spoken\nsetup,fir,the Fir\nworkload,full-load,full load\nworkload,half-load,half load\nmeasure,power,power\npart,board,board\n');
  expect(proof(new Source('script.md', 'At half load the board of the Fir draws 45 watts.\nUnder the full load it draws 80.'), loads).mentions.filter((m) => m.verdict !== 'not-a-claim').map((m) => m.verdict)).toEqual(['agrees', 'agrees']);
});
