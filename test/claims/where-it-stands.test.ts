// What a figure is set against, where it comes from and where it stands. Each text is true; turned it is not. Values are those of
// router-record.ts and card-record.ts.
import { describe, expect, test } from 'vitest';
import type { Facts } from '../../pipeline/facts/index.js';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { card } from './card-record.js';
import { routers } from './router-record.js';

const said = (facts: Facts, text: string): Verdict[] => proof(new Source('script.md', text), facts).mentions.filter((m) => m.verdict !== 'not-a-claim');
const garden = 'All of this is from the garden, on the brisk profile. ';
const dunes = 'The Corvid runs the dunes, and I read the card. ';

const cases: [what: string, facts: Facts, text: string, turned: string][] = [
  ['where it comes from', routers, `${garden}The Hask pulls 15 watts from the plug.`, `${garden}The Hask pulls 18 watts from the plug.`],
  ['a figure and the percentage that says it again', routers, `${garden}The Hask averages 112 megabytes a second. The Pollard gets by on 92, or 18 percent less.`, `${garden}The Hask averages 112 megabytes a second. The Pollard gets by on 92, or 27 percent less.`],
  ['against the room', card, `${dunes}At stock the core is at 71.8 degrees. Against the room that is a rise of 49.4 degrees.`, `${dunes}At stock the core is at 71.8 degrees. Against the room that is a rise of 43.4 degrees.`],
  ['what opens the sentence', card, `${dunes}Over the 60 percent limit, that is 10.5 decibels extra for the overclock.`, `${dunes}Over the 60 percent limit, that is 12.5 decibels extra for the overclock.`],
  ['the best of its own', card, `${dunes}At the 60 percent limit the Corvid keeps 81 percent of its best average frame rate. At the 80 percent limit it keeps 91 percent of its best frame rate.`, `${dunes}At the 60 percent limit the Corvid keeps 81 percent of its best average frame rate. At the 80 percent limit it keeps 96 percent of its best frame rate.`],
  ['one of that kind', card, `${dunes}Between stock and the overclock there is a gap of 3.3 decibels, and between stock and the 80 percent limit one of 3.5.`, `${dunes}Between stock and the overclock there is a gap of 3.3 decibels, and between stock and the 80 percent limit one of 4.5.`],
  ['where it stands and where it stood', card, `${dunes}At stock the core sits at 71.8 up from 34.6 at idle.`, `${dunes}At stock the core sits at 77.8 up from 34.6 at idle.`],
  ['what it is now', card, `${dunes}The 60 percent limit sheds 15 percent of the average frame rate, 81.7 now.`, `${dunes}The 60 percent limit sheds 15 percent of the average frame rate, 84.1 now.`],
];

describe('where a figure stands', () => {
  test.each(cases)('%s', (_, facts, text, turned) => {
    expect(said(facts, text).map((m) => `${m.text}: ${m.verdict}`).filter((m) => !m.endsWith(': agrees'))).toEqual([]);
    expect(said(facts, turned).map((m) => m.verdict)).toContain('disagrees');
  });
  test.each([
    ['told by a clause of its own', card, `${dunes}At stock it ends up 16 decibels above the murmur at which everything else was tried.`],
    ['the thing that none goes past', card, `${dunes}At stock the core is at 71.8 degrees. No setting gets hotter than the overclock, with a rise of 2.8.`],
    ['said of what is compared with', card, `${dunes}The 80 percent limit ends up 4.3 frames per second behind a card pulling 49 watts more.`],
    ['the two ends of a field', routers, 'From the garden, on the gentle profile, the loudest and the quietest are 6 decibels apart.'],
    ['a time that passes', routers, `${garden}The Hask took 36 seconds to come up, and ten minutes later it was still brisk.`],
  ])('%s is no alarm', (_, facts, text) => expect(said(facts, text).filter((m) => m.verdict === 'disagrees').map((m) => `${m.text}: ${m.why}`)).toEqual([]));
});
