// Every number that a check judges by, with where it comes from. A record overrides any of them under `thresholds:`.
import { matterRows } from '../facts/index.js';

export interface ThresholdRow {
  /** One quantity ("3 %"), a plain number ("6"), or a range ("0.05 V to 260 V"). */
  value: string;
  says: string;
  source: string;
}

const practice = 'common practice, no published source';
const logic = 'logic';

export const thresholds = {
  'runs-disagree': { value: '5 %', says: 'runs of one reading may lie this far apart, as a share of their mean (two to five runs; the range)', source: practice },
  'runs-disagree-extreme': { value: '10 %', says: 'the same for lows, peaks and ripple, which wander more than means', source: practice },
  'runs-disagree-temperature': { value: '3 K', says: 'the same for temperatures, which have no share', source: 'common practice, no published source: 1 to 3 K between mounts' },
  'runs-disagree-level': { value: '1.5 dB', says: 'the same for sound levels', source: practice },
  'runs-disagree-steps': { value: '2', says: 'a range within this many steps of the instrument is no disagreement', source: practice },
  'outlier-least-runs': { value: '6', says: 'from this many runs on, single outliers are looked for by the test of Grubbs', source: 'Grubbs 1969; with three runs the test can hardly tell one bad run (largest possible value 1.1547, limit 1.1543)' },
  'idle-unlike-temperature': { value: '1.5 K', says: 'how far the idle before one run may stand from the idle before all the others', source: practice },
  'idle-unlike': { value: '10 %', says: 'the same for other measures, as a share', source: practice },
  'idle-not-settled-temperature': { value: '1 K', says: 'how far the start of an idle window may stand from its end', source: 'IEC 61810-7: at most 1 K between readings of a settled temperature' },
  'idle-not-settled': { value: '5 %', says: 'the same for power', source: practice },
  'still-warming': { value: '0.2 K/min', says: 'how fast a temperature may still rise in the averaged window', source: 'IEC 62368-1, B.1.6: steady when rising at most 1 K in 5 min' },
  'still-warming-least': { value: '1 K', says: 'a rise over the window smaller than this is not told, however fast', source: 'IEC 61810-7: at most 1 K between readings of a settled temperature' },
  'window-moves-temperature': { value: '0.5 K', says: 'a temperature averaged in a window given by hand may stand this far from what the record’s own rule of steadiness gives', source: practice },
  'window-moves': { value: '1 %', says: 'the same for other measures, as a share', source: practice },
  'run-length-differs': { value: '80 %', says: 'of two lengths of runs of one test, the shorter must be at least this share of the usual one, and the usual one of the longer', source: practice },
  'room-differs': { value: '0.5 K', says: 'how far the room may differ between things compared', source: 'common practice, no published source: 1 K of room is about 1 K of result' },
  'below-room': { value: '1 K', says: 'how far below the room a temperature may read before it cannot be', source: practice },
  'above-limit': { value: '1 %', says: 'how far above a declared limit a mean may read (no allowance for temperatures)', source: practice },
  'target-missed': { value: '2 %', says: 'how far a mean may stand from a declared target', source: practice },
  'target-missed-level': { value: '0.5 dB', says: 'the same for sound levels', source: practice },
  'target-missed-temperature': { value: '1 K', says: 'the same for temperatures', source: practice },
  'limit-not-reached': { value: '95 %', says: 'a power limit that holds is used at least to this share', source: practice },
  'at-its-limit': { value: '97 %', says: 'power at or above this share of its limit is at its limit', source: practice },
  'clock-falls': { value: '2 %', says: 'a clock lower than at the start of the load by this share has fallen', source: practice },
  'unit-factor': { value: '20', says: 'a reading this many times off the others of its kind is looked at for a wrong unit', source: practice },
  'frames-over-time': { value: '0.5 %', says: 'how far a mean frame rate may stand above frames over time', source: practice },
  'power-disagrees': { value: '5 %', says: 'how far power may stand from voltage times current', source: practice },
  'heat-above-power': { value: '10 %', says: 'how far the heat in a coolant may stand above the power that heats it (or its uncertainty, where that is more)', source: practice },
  'heat-least': { value: '50 %', says: 'the least share of that power that a coolant carries away', source: practice },
  'background-too-near': { value: '6 dB', says: 'a level must stand at least this far above its background', source: 'ISO 3744, background correction: capped at 1.26 dB below 6 dB' },
  'background-adds': { value: '0.5 dB', says: 'a background that adds this much to a level is worth taking off', source: 'ECMA TR/107 caps the correction at 0.46 dB where the background lies 10 dB below' },
  'matrix-filled': { value: '50 %', says: 'holes are told only where at least this share of setups by settings was tested', source: practice },
  'price-age': { value: '90', says: 'days between the day of a price and the day of the episode', source: practice },
  'copied-least-digits': { value: '3', says: 'digits that each of several equal readings must have to look copied', source: practice },
  'share-range': { value: '0 % to 100 %', says: 'what a utilisation, an efficiency or a duty can be', source: logic },

  ...matterRows,

  'plausible-temperature': { value: '-60 °C to 150 °C', says: 'a temperature on a test bench', source: practice },
  'plausible-voltage': { value: '0.1 V to 300 V', says: 'a supply voltage', source: practice },
  'plausible-frequency': { value: '10 MHz to 12 GHz', says: 'a clock', source: practice },
  'plausible-power': { value: '1 mW to 4 kW', says: 'the power of a part or a system', source: practice },
  'plausible-current': { value: '0.1 mA to 400 A', says: 'a current', source: practice },
  'plausible-rotation': { value: '0 rpm to 30000 rpm', says: 'the speed of a fan, a pump or a disk', source: 'common practice, no published source: 200 to 3,500 rpm, small fans to 10,000' },
  'plausible-flow': { value: '0.05 L/min to 20 L/min', says: 'coolant flow', source: 'common practice, no published source: 0.5 to 6 L/min' },
  'plausible-sound-level': { value: '5 dB to 110 dB', says: 'a sound level', source: 'common practice, no published source: quiet below 30, loud above 45' },
  'plausible-frame-rate': { value: '0.5 fps to 3000 fps', says: 'a frame rate', source: practice },
} satisfies Record<string, ThresholdRow>;

export type ThresholdName = keyof typeof thresholds;
