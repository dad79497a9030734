// narration.md, and how long it takes to read.
import { expect, test } from 'vitest';
import { narrate, narrationText, speakingTime, wordsPerMinute } from '../../pipeline/narration/index.js';
import { factsOf } from '../facts/episode.js';
import { arrangement, mapOf, place } from './episodes.js';

test('a number counts as the words that it is spoken with', () => {
  expect(wordsPerMinute).toBe(150);
  // twenty nine degrees: three words
  expect(speakingTime('Twenty-nine degrees.')).toBe(1.2);
  expect(speakingTime('')).toBe(0);
});

test('the digit form takes as long as the spelled-out one', () => {
  const facts = factsOf('a/b/c/frequency/core/load: 2105 2105 MHz');
  expect(narrate(facts, { form: 'digits' }).map((s) => s.seconds)).toEqual(narrate(facts, { form: 'words' }).map((s) => s.seconds));
});

test('disclosures and cautions stand before the sentences, the times beside the headings', () => {
  const facts = factsOf('a/b/c/power/board/load: 100 100 W', { title: 'One board', disclosures: [{ text: 'Lent by its maker.', place }] });
  const text = narrationText(facts, narrate(facts), [{ text: 'Mains voltage can kill.', because: 'a wall meter' }]);
  expect(text).toBe(`# One board

2 sentences to choose from, about 0:07 in all at 150 words a minute. Each stands on its own.

## To disclose

- Lent by its maker.

## To say with it

- Mains voltage can kill.

## How it was tested (0:04)

Every figure is the mean of two runs.

## What was measured (0:04)

Board power was one hundred watts under load.
`);
});

test('markup in names and titles stays text', () => {
  const facts = factsOf('a/b/c/power/board/load: 100 W\nd/b/c/power/board/load: 120 W', {
    title: '# <script>alert(1)</script> *bold* [x](y)', setups: mapOf(arrangement('a', 'the <b>bench</b>'), arrangement('d', 'the `desk`')),
    disclosures: [{ text: '1. not a list\n\n# not a heading', place }],
  });
  const text = narrationText(facts, narrate(facts), []);
  expect(text).toContain('# \\# \\<script\\>alert(1)\\</script\\> \\*bold\\* \\[x\\](y)');
  expect(text).toContain('- 1\\. not a list \\# not a heading');
  expect(text).toContain('\\<b\\>bench\\</b\\>');
  expect(text).not.toMatch(/(?<!\\)[<`*]/);
});
