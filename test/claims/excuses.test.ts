// What would be right for another reading excuses nothing where the clause says in so many words that this one is meant; and some
// sentences that have to be read right for that.
import { describe, expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { routers } from './router-record.js';

const last = (text: string): string => proof(new Source('script.md', text), routers).mentions.filter((m) => m.verdict !== 'not-a-claim').at(-1)!.verdict;

/** Where only the last number may change. */
function slip(name: string, text: (n: string) => string, right: string, wrong: string): void {
  describe(name, () => {
    test(`${right} is right`, () => expect(last(text(right))).toBe('agrees'));
    test(`${wrong} is wrong`, () => expect(last(text(wrong))).toBe('disagrees'));
  });
}

// 8 of 10 is 20 % less, 10 of 8 is 25 % more.
slip('of the other base, the direction said', (n) => `From the garden, the Pollard takes ${n} percent less power on gentle than on brisk.`, '20', '25');
// 60 of 69 is 13 % less, 69 of 60 is 15 % more.
slip('the part said', (n) => `From the garden on gentle, the Pollard averages 80 megabytes a second, while its worst second is ${n} percent below that of the Hask.`, '13', '36');
// 33 of 25 is 32 % more.
slip('beside its figure, the base named', (n) => `The Pollard needs 33 seconds on gentle, ${n} percent more than on brisk.`, '32', '24');
// 420 of 700 is 40 % less.
slip('the quantity in the comparative', (n) => `The Pollard is ${n} percent lighter than the Hask.`, '40', '67');
// 10 of 12 is 17 % less; the Vimmer was run on gentle only.
slip('work said of both at the end; one that has but one setting', (n) => `In the cellar both were slow. On brisk, the Pollard draws ${n} percent less than the Vimmer from the garden.`, '17', '21');
// 92 of 80 is 15 % more.
slip('a gain on something', (n) => `From the garden on gentle, the Pollard gets 80 megabytes a second. On brisk it is 92, a gain of ${n} percent on the gentle profile.`, '15', '13');
// 92 of 80 is 15 % more, 80 of 92 is 13 % less.
slip('one figure instead of the other', (n) => `In the garden, the Pollard gets 92 megabytes a second on brisk instead of 80 on gentle, which is ${n} percent better.`, '15', '13');
// 8 of 10 is 80 %.
slip('a share, of what is said', (n) => `From the garden, the Pollard on gentle draws ${n} percent of the power that it takes on brisk.`, '80', '75');
// 10 of 15 is 33 % less.
slip('of the figure beside it, not of what was spoken of before', (n) => `From the garden on brisk, it is 27 decibels on the Pollard, as it draws just 10 watts here, ${n} percent less than the Hask.`, '33', '29');

test('four out of five are a count, and how many there are', () => {
  const verdicts = proof(new Source('script.md', 'On brisk from the garden, the Hask draws 15 watts and is 5 above the Pollard, but 4 out of 5 stay below.'), routers).mentions.map((m) => m.verdict);
  expect(verdicts.slice(2)).not.toContain('disagrees');
});
