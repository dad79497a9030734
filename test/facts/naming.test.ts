// What a fact is called on a picture.
import { expect, test } from 'vitest';
import { type FactKind, factName, Facts, isFact } from '../../pipeline/facts/index.js';
import { Exact } from '../../pipeline/quantities/index.js';
import { episodeOf } from './episode.js';

const episode = episodeOf(`
a/s/w/temperature/core/load: 65 65 65 °C
a/s/w/temperature/room/load: 20 20 20 °C
a/s/w/power/board/load: 300 300 300 W
a/s/w/noise/card/load: 36.0 36.0 36.0 dB(A)
a/s/w/noise/background/load: 24.0 24.0 24.0 dB(A)
a/s/w/frames//load: 18000 18000 18000 frame-count
a/s/w/energy/board/load: 25 25 25 Wh
a/s/w/flow/loop/load: 2.0 2.0 2.0 L/min
`.trim());
episode.coolant = { fluid: 'water', share: Exact.zero, place: episode.place };
const facts = new Facts(episode);
const key = (path: string) => `a/s/w/${path}/load`;

test.each<[FactKind, string, string[], string]>([
  ['per_watt', '', [`(over_room:${key('temperature/core')}~part=room)`, key('power/board')], 'Core temperature over room per watt'],
  ['energy', 'kilojoules', [key('energy/board')], 'Board energy'],
  ['energy', '', [key('power/board'), '=2 min'], 'Board power, energy'],
  ['per_energy', 'joule', [key('frames/'), key('energy/board')], 'Frames per joule'],
  ['heat', '', [key('flow/loop'), '=2 K', '=30 °C'], 'Heat carried by the coolant'],
  ['level_sum', '', [key('noise/card'), key('noise/background')], 'Card noise, sum of sources'],
  ['without_background', '', [key('noise/card'), key('noise/background')], 'Card noise without background'],
  ['at_distance', '', [key('noise/card'), '=50cm', '=1m'], 'Card noise at 1 m'],
])('%s%s of %j', (kind, variant, operands, name) => {
  const fact = facts.derive(kind, operands, variant);
  expect(isFact(fact) ? factName(facts.about, fact) : fact.why).toBe(name);
});
