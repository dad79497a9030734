// Without any record there is nothing to hold a script against but itself: no alarm on what is true, whatever it is about.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { bareEpisode } from '../../pipeline/records/index.js';
import { trialFolders } from '../trials/folders.js';

const nothing = new Facts(bareEpisode([], [], { file: '', line: 1, column: 1, endLine: 1, endColumn: 1 }));
const alarms = (text: string): string[] => {
  const { mentions, findings } = proof(new Source('text.md', text), nothing);
  return [...mentions.filter((m) => m.verdict === 'disagrees').map((m) => `${m.place.line} ${m.text}`), ...findings.filter((f) => f.severity === 'error').map((f) => `${f.place.line} ${f.message}`)];
};

const trials = join(import.meta.dirname, '../trials');
test.each(trialFolders())('%s', (name) => {
  expect(alarms(readFileSync(join(trials, name, 'script.md'), 'utf8'))).toEqual([]);
});

const recipe = `# Plum cake for a tin of 26 centimetres

You need 1.2 kilograms of plums, 250 g of flour, half as much sugar, three eggs and a pinch of salt.
Take two thirds of the flour first and keep the last third, about 80 grams, for later.
Warm 120 millilitres of milk to 35 degrees, never above 40, and stir in 20 grams of fresh yeast or 7 grams of dried.
Let it rise for forty-five minutes to an hour, until it is twice its size.
Set the oven to 180 °C, or 160 with the fan. That is 356 °F for those with an old one.
Bake for 35 to 40 minutes. After 25 minutes, cover the top; after 30, start looking every five.
Serves eight, or four hungry ones. Each slice has about 310 kilocalories, of which a quarter comes from sugar.
On the second day it is better, on the third it is dry. With cream it doubles in weight, they say.
My aunt bakes it at 200 degrees for 20 minutes, 20 degrees hotter and half as long. It is never done.
`;
const travel = `# Over the pass in three days

We left at 6:40 on the 14th of May, 2019, with two rucksacks of 11 and 13 kilos, and one map between us.
The first day has 17 kilometres and climbs 940 metres, from 1,180 at the bridge to 2,120 at the hut.
The hut has 46 beds in five rooms, costs 38 francs with breakfast, and was a third full.
At night it fell to minus 3 degrees outside and 9 inside, so twelve degrees warmer, with the stove out.
The second day is shorter: 12.5 km, four and a half hours, of which we spent one and a quarter waiting for the fog.
The pass lies at 2,604 metres. The wind blew at 60 to 70 kilometres an hour, twice what had been forecast.
Of the nine people we met, seven were older than sixty and none was out of breath.
On day three it is 1,500 metres down, and 100 percent of it in the knees.
Bus 412 leaves at 15:05, 17:05 and 19:05. We caught the second one with half a minute to spare.
In all: 41 kilometres, 22 hours, 2 blisters, 310 photographs, of which ten are sharp.
`;
const repair = `# A rear wheel that clicks

Tools: a 5 mm hex key, a 15 mm spanner, two tyre levers, a chain gauge. Budget 40 minutes.
1. Shift to the smallest of the eleven sprockets and let the tyre down below 2 bar. It holds 6.5 when full.
2. Undo the bolts by half a turn each, then by one and a half. They were at 8 newton metres; the label says 5 to 6.
3. Measure the chain. At 0.5 percent wear change it, at 0.75 the cassette goes with it. Mine had 0.9, nearly twice the limit.
4. The axle is 142 mm wide, 7 mm more than the old 135.
5. Spin the wheel. If it is out by more than 1 mm, tighten every second spoke on that side by a quarter turn.
With 32 spokes, of which two were loose, the click came once a turn, so about three times a second at 20 km/h.
A new bearing costs 12 to 15 euros. The shop wanted 60, four times as much, and two weeks.
The pads were 0.8 mm thin; new ones have 4. That is 80 percent gone in 2,500 kilometres.
It now weighs 9.4 kilos, 200 grams less than before, because I left off the bell.
`;

test.each([['a recipe', recipe], ['a walk over a pass', travel], ['a repair', repair]])('%s', (_, text) => {
  expect(alarms(text)).toEqual([]);
});
