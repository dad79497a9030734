// Scripts in several ways of speaking in which every number is true: none of it may be called wrong. Each number was worked out
// by hand from the tables in shelf-record.ts and card-record.ts. And some alterations in them that have to be noticed.
import { describe, expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import type { Facts } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { card } from './card-record.js';
import { shelf } from './shelf-record.js';

const alarms = (text: string, facts: Facts): string[] => proof(new Source('script.md', text), facts).mentions.filter((m) => m.verdict === 'disagrees').map((m) => `${m.place.line} ${m.text}: ${m.recorded}, ${m.facts[0]}`);

const boxes = `# Two boxes for the shelf
We copied the same folder three times per box, first with two drives, then with four.

## The Garrow
With two drives the Garrow reads at 212.4 megabytes a second and writes at 187.6.
That costs 24.8 watts, where it had been happy with 14.6 doing nothing.
So the copy adds about ten watts, and the drives go from 33 to just over 41 degrees.
It is done after an hour and twenty-two minutes.
Now we fill it up, four drives.
Reading climbs to 348, writing to 301.2, and the copy is through in 51 minutes, half an hour sooner.
The meter says 38.4 watts now, which is 13.6 more than before, and the noise is 31.6 instead of 27.1.
If 31.6 decibels on a shelf is too much, stay with the pair, we would not mind.
Its drives are at 46.5, so five and a bit more than with two, and still 8.5 below our limit.
The maker promises 360 for reading, and we are 12 short of that.

## The Lintel
The Lintel weighs 2.85 kilograms, the Garrow 3.42.
With two drives we are at 224 megabytes a second for reading, so 11.6 ahead of the other one, but for writing we are 15.7 behind it.
It takes 21.3 watts and idles at 12.2.
At 24.4 decibels you forget about it.
The copy needs an hour and a half, eight minutes longer than the Garrow did.
Four drives change the picture.
Reading is up 75 percent on what we had with two, to 391.5, and writing gains even 88 percent.
It also takes 12.3 watts more, 33.6 in all.
And the job is finished after 48 minutes, three minutes before the Garrow.
The warmest drive touches 49.7, that's the hottest of all four combinations, but there are 5.3 degrees left.
Between the two boxes, the drives go from 46.5 in the Garrow to 49.7, so that's 3.2 degrees more, and it draws 4.8 watts less.

## What it comes down to
Let's stay with four drives.
The Lintel reads 43.5 megabytes a second faster, or 12.5 percent, it's 2.7 decibels quieter, and it saves almost five watts.
Its drives pay for it with 3.2 degrees.
From two drives to four, the Garrow gets 64 percent faster at reading, the Lintel 75.
Only one of the four combinations is louder than the 30 decibels I had set myself.
If your shelf is in the bedroom, 2.7 decibels are worth more to you than 43 megabytes.
Per watt, the Lintel reads 11.7 megabytes a second, the Garrow 9.1.
I could live with 49.7 degrees, as the limit is 55.
And 570 grams less on the shelf are 570 grams less on the shelf.
A hundred and eighty euros is what the Lintel costs, twenty more than the other.
`;

const spoken = `okay so garrow first two drives in there
reads two hundred twelve point four writes one eighty seven point six megabytes a second
twenty seven point one decibels so you do hear it
and it was thirty three degrees before and it's forty one point two now so that's eight point two up
with four its three hundred forty eight and three hundred one point two
power goes up to thirty eight point four and that's thirteen point six more
lintel then same thing two drives first
two hundred twenty four and one seventy one point nine
twenty one point three watts so three and a half less than the garrow
four drives three ninety one point five and three twenty two point seven
thirty three point six watts and twenty eight point nine decibels
so it's quieter by two point seven and it's faster by forty three point five
the drives are warmer though forty nine point seven against forty six point five
`;

const short = `# Garrow against Lintel, in short
Power at the wall, copying: Garrow 24.8 with two drives, 38.4 with four; Lintel 21.3 and 33.6.
Idle: 14.6 and 22.9 for the one, 12.2 and 19.5 for the other.
Noise, same order: 27.1, 31.6, 24.4, 28.9.
Two more drives cost the Garrow 13.6 watts while copying and 8.3 while idle.
They cost the Lintel 12.3 and 7.3.
Neither box went past 50 degrees. The limit is 55.
The quietest is the Lintel with two drives, 24.4; the loudest the Garrow with four, and 7.2 decibels lie between them.
The fastest copy took 48 minutes, the slowest 90.
Nobody needs 391.5 megabytes a second over a line that carries 117.
What you hear at 31.6 is mostly the fan.
While the Garrow copies, its drives warm up by 8.2 with two and by 10.1 with four.
The Lintel's warm up by 9.7 and 11.7.
I would pay 3.2 degrees for 2.7 decibels any day.
Writing with four drives is 21.5 faster on the Lintel, with two it's 15.7 slower.
That a box draws nearly 20 watts for doing nothing is a lot, though. The Lintel with four drives does.
The Garrow does even 22.9.
Filling the Lintel nearly halved the time, from 90 to 48.
With two drives the Garrow is the faster writer, 187.6 to 171.9.
`;

const told = `# One card, four ways to run it
I bought the Corvid with my own money, 649 of them, and it will stay.

## Out of the box
Stock, the dunes run at 96.4 frames per second, and the one percent low is 71.2.
The board takes 248.6 watts for it, so it's practically at its limit of 250.
At idle it's 11.3, by the way, which is fine, and at 21 decibels you'll hear your own chair.
The core climbs from 34.6 to 71.8 degrees. That's 37.2 more, and still 16.2 away from where it would slow down.
Memory gets to 82, thirteen under what it's allowed.
For 38.4 decibels I wouldn't send it back, but I'd like less.
The clock averages 2,610, ten more than the box says.

## Turning it down
So first I took the limit down to 80 percent.
And it loses 4.3 frames. That's it.
Four and a half percent of the speed gone, 20 percent of the power saved.
Power's down to 199.2, the core to 65.3, and the noise by three and a half decibels.
What's left is 92.1 on average and 68.9 for the low.
The fans slow down from 1,620 to 1,380, and that's where the quiet comes from.
At sixty percent it's a different story.
81.7 frames are 15 percent fewer than stock, and the lows fall by 10.8.
On the other hand, 149.5 watts! That's 99 less than where we started, for 14.7 frames.
58.1 degrees on the core and 72 on the memory, and the meter says 31.2.
You could put that in a bedroom. With the 7.2 decibels I saved I could, anyway.
The core runs 420 megahertz slower than stock and doesn't care.

## Turning it up
Overclocked, I get 101.2, five percent more, or 4.8 frames if you prefer.
It costs 23.3 watts, 3.3 decibels, and 2.8 degrees.
Memory's at 86, so nine degrees are left there.
1,850 rpm is what it takes, 230 more than stock.
I don't think 4.8 frames are worth 3.3 decibels, and I certainly wouldn't pay 23 watts for them.

## So which one
Between the overclock and sixty percent lie 19.5 frames, 122.4 watts and ten and a half decibels.
Per watt, sixty percent wins: 0.55 frames against 0.39 at stock and 0.37 overclocked.
The eighty percent limit gives me 0.46, and it's where my card is now.
Four frames less than I paid for, and 49 watts less than I'd have to cool.
If I had to live with 38.4 decibels, I'd rather read a book.
Going from stock to 80 percent saves 49.4 watts, and going from 80 to 60 saves another 49.7.
But the first step costs 4.3 frames and the second 10.4, more than twice as much.
The hottest the core ever got was 74.6, and that's 13.4 below the limit.
Nothing here is louder than 42 decibels, and nothing pulls more than 275 watts.
In the quietest setting it's 31.2, in the loudest 41.7.
`;

const notes = `# corvid notes
stock: 96.4 / 71.2 fps, 248.6 W, core 71.8, mem 82, 38.4 dB(A), 1620 rpm, 2610 MHz
80 %: 92.1 / 68.9 fps, 199.2 W, core 65.3, mem 78, 34.9 dB(A), 1380 rpm, 2475 MHz
60 %: 81.7 / 60.4 fps, 149.5 W, core 58.1, mem 72, 31.2 dB(A), 1110 rpm, 2190 MHz
oc: 101.2 / 73.8 fps, 271.9 W, core 74.6, mem 86, 41.7 dB(A), 1850 rpm, 2745 MHz
80 % vs stock: -4.3 fps (-4 %), -49.4 W (-20 %), -6.5 K, -3.5 dB
60 % vs stock: -14.7 fps (-15 %), -99.1 W (-40 %), -13.7 K, -7.2 dB
oc vs stock: +4.8 fps (+5 %), +23.3 W (+9 %), +2.8 K, +3.3 dB
the overclock runs 21.9 W over the 250 W limit of stock
room was 22.4 all evening
`;

const answers = `# The Corvid, again
Last week somebody asked whether 72 degrees is too hot for a card. It isn't.
Here's the thing: the dune scene makes 71.2 of the lows and 96.4 of the averages when you leave everything alone.
The noise is another matter. I measured 38.4, and after lowering the limit to 80 percent I measured 34.9.
Three and a half decibels is a lot, and four frames is not.
Lower still, 60 percent, and it's 31.2.
So it goes 38.4, 34.9, 31.2, and the frame rate goes 96.4, 92.1, 81.7.
See how the first step is cheap?
You give up 4.3 frames for 49 watts there, but 10.4 for the next 50.
In degrees it's 6.5 and then 7.2.
Did I try the other direction? I did, and it wasn't pretty: 101.2 frames, 271.9 watts, 41.7 decibels.
The memory was at 86 then, which is four more than stock, eight more than at 80 percent and fourteen more than at sixty.
Should you worry about 86? The limit is 95, so no.
Fans: 1,850 then, 1,620 as it comes, 1,380, 1,110.
In other words, from the top to the bottom they lose 740 turns a minute.
The clock I don't look at. But fine, 2,745, 2,610, 2,475 and 2,190.
2,190 is 410 short of what the box promises, and who cares at 31.2 decibels.
With 199.2 watts in the middle I've kept 96 percent of the frames with 80 percent of the power.
`;

const all: [name: string, text: string, facts: Facts][] = [['boxes', boxes, shelf], ['spoken', spoken, shelf], ['short', short, shelf], ['told', told, card], ['notes', notes, card], ['answers', answers, card]];

describe('nothing true is called wrong', () => {
  test.each(all)('%s', (_, text, facts) => expect(alarms(text, facts)).toEqual([]));
});

describe('what is altered is', () => {
  test.each([
    ['reads at 212.4', 'reads at 221.4', boxes, shelf], ['The Lintel weighs 2.85', 'The Lintel weighs 3.42', boxes, shelf], ['13.6 more than before', '12.6 more than before', boxes, shelf], ['half an hour sooner', 'half an hour later', boxes, shelf],
    ['Garrow 24.8 with two drives', 'Garrow 25.8 with two drives', short, shelf], ['The core climbs from 34.6 to 71.8', 'The core climbs from 34.6 to 70.8', told, card], ['The board takes 248.6 watts', 'The board takes 248.6 decibels', told, card],
    ['149.5 watts! That', '159.5 watts! That', told, card],
  ] as [string, string, string, Facts][])('%s: %s', (find, replace, text, facts) => {
    expect(text.split(find)).toHaveLength(2);
    expect(alarms(text.replace(find, replace), facts)).not.toEqual([]);
  });
});

describe('times said in hours and minutes', () => {
  const verdicts = (text: string): string[] => proof(new Source('script.md', text), shelf).mentions.filter((m) => m.verdict !== 'not-a-claim').map((m) => m.verdict);
  test.each([
    ['With two drives the Garrow is through the copy after an hour and twenty-two minutes.', 'agrees'],
    ['With two drives the Garrow is through the copy after an hour and thirty-two minutes.', 'disagrees'],
    ['With two drives the Lintel needs one hour and thirty minutes for the copy.', 'agrees'],
  ])('%s %s', (text, verdict) => expect(verdicts(text)).toEqual([verdict]));
  test('a ride is none of what was measured', () => expect(verdicts('After a ride of two hours and ten minutes I unpacked the Garrow.')).toEqual([]));
});
