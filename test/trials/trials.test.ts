// The trial episodes: what the proofreader catches, and that it does not cry wolf. Floors of what has been reached, by trial
// (shares in percent; alarms are on the true script); raise them when it gets better. Lower one only where a rule that served
// a single sentence of a trial is taken out again, or where alarms rested on a misreading
// (what was only carried over, or what is nowhere near the number) and fell on true scripts as well (DEVELOPERS.md, "An alarm is of a slip's size", has the figures).
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { score } from './score-in-process.js';

const floors: Record<string, { caught: number; alarms: number; coverage: number; tied: number; quiet: number }> = {
  'small-case-card': { caught: 100, alarms: 0, coverage: 98, tied: 92, quiet: 100 },
  'tower-coolers': { caught: 100, alarms: 0, coverage: 98, tied: 98, quiet: 100 },
  'laptop-sustained': { caught: 88, alarms: 0, coverage: 96, tied: 92, quiet: 100 },
  'aio-mounting': { caught: 88, alarms: 0, coverage: 93, tied: 92, quiet: 100 },
  'auto-captions-aio-loops': { caught: 88, alarms: 0, coverage: 99, tied: 94, quiet: 100 },
  'backplate-putty': { caught: 88, alarms: 0, coverage: 98, tied: 95, quiet: 100 },
  'banks-at-the-socket': { caught: 68, alarms: 1, coverage: 85, tied: 84, quiet: 87 },
  'battery-boxes': { caught: 92, alarms: 0, coverage: 90, tied: 93, quiet: 100 },
  'bench-to-quillbox': { caught: 64, alarms: 1, coverage: 86, tied: 94, quiet: 100 },
  'british-monitors': { caught: 96, alarms: 0, coverage: 99, tied: 94, quiet: 100 },
  'card-three-drivers': { caught: 96, alarms: 0, coverage: 98, tied: 92, quiet: 95 },
  'card-two-cases': { caught: 88, alarms: 0, coverage: 88, tied: 83, quiet: 100 },
  'careful-paste': { caught: 96, alarms: 0, coverage: 98, tied: 92, quiet: 100 },
  'case-airflow': { caught: 84, alarms: 0, coverage: 99, tied: 88, quiet: 100 },
  'cupboard-limits': { caught: 52, alarms: 1, coverage: 85, tied: 90, quiet: 83 },
  'drives-heatsink': { caught: 88, alarms: 0, coverage: 84, tied: 96, quiet: 100 },
  'drives-long-copy': { caught: 72, alarms: 0, coverage: 90, tied: 91, quiet: 100 },
  'external-card-dock': { caught: 80, alarms: 0, coverage: 94, tied: 90, quiet: 100 },
  'fahrenheit-loop': { caught: 96, alarms: 0, coverage: 97, tied: 91, quiet: 100 },
  'five-cases-dust-filters': { caught: 76, alarms: 0, coverage: 87, tied: 94, quiet: 94 },
  'five-fans-one-meter': { caught: 80, alarms: 0, coverage: 91, tied: 93, quiet: 100 },
  'five-towers': { caught: 92, alarms: 0, coverage: 95, tied: 91, quiet: 100 },
  'four-drives-three-queues': { caught: 80, alarms: 0, coverage: 89, tied: 93, quiet: 100 },
  'four-kits': { caught: 84, alarms: 0, coverage: 97, tied: 93, quiet: 100 },
  'four-mini-pcs': { caught: 92, alarms: 0, coverage: 90, tied: 89, quiet: 100 },
  'four-pads': { caught: 60, alarms: 1, coverage: 84, tied: 89, quiet: 93 },
  'four-pastes': { caught: 76, alarms: 0, coverage: 85, tied: 91, quiet: 100 },
  'four-supplies-attic': { caught: 72, alarms: 3, coverage: 85, tied: 90, quiet: 83 },
  'handheld-power-caps': { caught: 68, alarms: 0, coverage: 92, tied: 96, quiet: 83 },
  'handhelds-battery': { caught: 84, alarms: 0, coverage: 92, tied: 90, quiet: 100 },
  'laptop-gpu-modes': { caught: 92, alarms: 1, coverage: 87, tied: 90, quiet: 100 },
  'laptop-repaste': { caught: 80, alarms: 0, coverage: 93, tied: 95, quiet: 96 },
  'laptop-three-modes': { caught: 80, alarms: 0, coverage: 95, tied: 96, quiet: 93 },
  'laptops-cable-out': { caught: 72, alarms: 6, coverage: 72, tied: 89, quiet: 88 },
  'laptops-undervolt': { caught: 60, alarms: 1, coverage: 81, tied: 90, quiet: 100 },
  'loop-coolants': { caught: 76, alarms: 1, coverage: 92, tied: 95, quiet: 85 },
  'loop-pump-fans': { caught: 40, alarms: 0, coverage: 62, tied: 91, quiet: 84 },
  'loop-pumps': { caught: 84, alarms: 1, coverage: 88, tied: 85, quiet: 85 },
  'memory-speeds-desk': { caught: 88, alarms: 0, coverage: 99, tied: 91, quiet: 100 },
  'mini-pc-trio': { caught: 84, alarms: 0, coverage: 99, tied: 93, quiet: 100 },
  'monitor-backlight': { caught: 72, alarms: 2, coverage: 82, tied: 91, quiet: 100 },
  'notes-memory-kits': { caught: 96, alarms: 0, coverage: 99, tied: 88, quiet: 100 },
  'one-card-three-drivers': { caught: 84, alarms: 0, coverage: 85, tied: 95, quiet: 100 },
  'one-chip-nine-ways': { caught: 76, alarms: 4, coverage: 83, tied: 84, quiet: 100 },
  'one-loop-three-radiators': { caught: 76, alarms: 0, coverage: 83, tied: 89, quiet: 100 },
  'paste-over-time': { caught: 76, alarms: 0, coverage: 85, tied: 91, quiet: 95 },
  'pc-monitors-power': { caught: 80, alarms: 1, coverage: 89, tied: 94, quiet: 100 },
  'pink-coolant': { caught: 84, alarms: 0, coverage: 74, tied: 88, quiet: 100 },
  'pocket-money-coolers': { caught: 84, alarms: 2, coverage: 81, tied: 93, quiet: 100 },
  'power-bank-questions': { caught: 76, alarms: 2, coverage: 80, tied: 92, quiet: 83 },
  'power-supply-transients': { caught: 84, alarms: 0, coverage: 94, tied: 91, quiet: 100 },
  'processor-limits': { caught: 92, alarms: 0, coverage: 90, tied: 88, quiet: 100 },
  'question-and-answer-chargers': { caught: 96, alarms: 0, coverage: 94, tied: 91, quiet: 100 },
  'quiet-supplies': { caught: 84, alarms: 0, coverage: 89, tied: 93, quiet: 92 },
  'radiator-fans': { caught: 96, alarms: 0, coverage: 91, tied: 92, quiet: 100 },
  'ram-tuning': { caught: 80, alarms: 4, coverage: 82, tied: 86, quiet: 94 },
  'rambling-fans': { caught: 88, alarms: 0, coverage: 96, tied: 97, quiet: 100 },
  'rambling-water-loop': { caught: 72, alarms: 0, coverage: 91, tied: 92, quiet: 100 },
  'repasted-laptops': { caught: 60, alarms: 0, coverage: 92, tied: 95, quiet: 100 },
  'side-panels': { caught: 80, alarms: 0, coverage: 90, tied: 93, quiet: 100 },
  'six-case-fans': { caught: 84, alarms: 0, coverage: 93, tied: 92, quiet: 100 },
  'six-coolers-three-loads': { caught: 68, alarms: 1, coverage: 86, tied: 90, quiet: 100 },
  'ssd-heatsinks': { caught: 84, alarms: 0, coverage: 91, tied: 93, quiet: 100 },
  'storage-boxes': { caught: 80, alarms: 0, coverage: 87, tied: 89, quiet: 75 },
  'story-handheld': { caught: 80, alarms: 0, coverage: 84, tied: 93, quiet: 100 },
  'supplies-corrected': { caught: 76, alarms: 0, coverage: 88, tied: 92, quiet: 100 },
  'table-reader-enclosures': { caught: 88, alarms: 0, coverage: 95, tied: 83, quiet: 90 },
  'terse-psu': { caught: 92, alarms: 0, coverage: 96, tied: 96, quiet: 100 },
  'thermal-pads': { caught: 80, alarms: 0, coverage: 95, tied: 89, quiet: 92 },
  'three-cards-limit': { caught: 64, alarms: 1, coverage: 83, tied: 86, quiet: 92 },
  'three-chargers-two-laptops': { caught: 72, alarms: 0, coverage: 82, tied: 96, quiet: 92 },
  'three-coolers-one-chip': { caught: 72, alarms: 3, coverage: 77, tied: 87, quiet: 100 },
  'three-coolers-two-chips': { caught: 68, alarms: 0, coverage: 85, tied: 88, quiet: 100 },
  'three-radiators-one-loop': { caught: 68, alarms: 4, coverage: 71, tied: 87, quiet: 97 },
  'three-supplies': { caught: 92, alarms: 0, coverage: 94, tied: 93, quiet: 95 },
  'tiny-pc': { caught: 72, alarms: 2, coverage: 84, tied: 88, quiet: 85 },
  'towers-again': { caught: 64, alarms: 1, coverage: 84, tied: 88, quiet: 100 },
  'two-boxes-three-modes': { caught: 76, alarms: 1, coverage: 90, tied: 92, quiet: 100 },
  'two-cards-limits': { caught: 52, alarms: 3, coverage: 86, tied: 87, quiet: 100 },
  'two-cards-two-games': { caught: 68, alarms: 0, coverage: 84, tied: 89, quiet: 100 },
  'two-cards-undervolt': { caught: 76, alarms: 1, coverage: 87, tied: 93, quiet: 93 },
  'two-cases': { caught: 88, alarms: 0, coverage: 92, tied: 92, quiet: 75 },
  'two-cases-four-layouts': { caught: 72, alarms: 2, coverage: 84, tied: 87, quiet: 95 },
  'two-tablets-charging': { caught: 92, alarms: 0, coverage: 87, tied: 90, quiet: 100 },
  'undervolt-card': { caught: 88, alarms: 0, coverage: 92, tied: 93, quiet: 100 },
  'unhurried-memory': { caught: 92, alarms: 4, coverage: 85, tied: 90, quiet: 100 },
  'unpunctuated-ssd': { caught: 88, alarms: 0, coverage: 95, tied: 91, quiet: 100 },
  'usb-chargers': { caught: 72, alarms: 0, coverage: 87, tied: 93, quiet: 100 },
  'boxed-coolers': { caught: 48, alarms: 1, coverage: 75, tied: 90, quiet: 100 },
  'card-bench-and-case': { caught: 72, alarms: 1, coverage: 92, tied: 86, quiet: 100 },
  'charger-sizes': { caught: 60, alarms: 3, coverage: 70, tied: 92, quiet: 96 },
  'chargers-and-banks': { caught: 76, alarms: 2, coverage: 86, tied: 92, quiet: 90 },
  'enclosures-and-cables': { caught: 88, alarms: 0, coverage: 92, tied: 92, quiet: 100 },
  'four-drives-heatsink': { caught: 64, alarms: 1, coverage: 83, tied: 84, quiet: 92 },
  'four-monitors-power': { caught: 72, alarms: 0, coverage: 84, tied: 90, quiet: 89 },
  'handhelds-docked': { caught: 92, alarms: 0, coverage: 87, tied: 100, quiet: 100 },
  'liquid-loops': { caught: 64, alarms: 0, coverage: 82, tied: 96, quiet: 100 },
  'loop-two-layouts': { caught: 60, alarms: 3, coverage: 77, tied: 93, quiet: 93 },
  'pump-loop': { caught: 60, alarms: 0, coverage: 83, tied: 89, quiet: 100 },
  'push-pull-radiator': { caught: 72, alarms: 3, coverage: 75, tied: 81, quiet: 68 },
  'server-cupboard': { caught: 56, alarms: 0, coverage: 89, tied: 96, quiet: 100 },
  'small-boxes': { caught: 64, alarms: 1, coverage: 82, tied: 93, quiet: 75 },
  'tessarin-three-coolers': { caught: 84, alarms: 0, coverage: 75, tied: 91, quiet: 100 },
  'three-supplies-load': { caught: 80, alarms: 3, coverage: 77, tied: 89, quiet: 100 },
  'two-generations': { caught: 96, alarms: 2, coverage: 92, tied: 100, quiet: 94 },
  'two-laptops-docked': { caught: 40, alarms: 0, coverage: 47, tied: 75, quiet: 100 },
};

const share = (a: number, b: number): number => (b ? (100 * a) / b : 100);

const scores: ReturnType<typeof score>[] = [];

describe.each(Object.entries(floors))('%s', (folder, floor) => {
  const s = score(join(import.meta.dirname, folder));
  scores.push(s);
  test('false alarms on the true script', () => expect(s.alarms.slice(floor.alarms)).toEqual([]));
  test('mistakes caught', () => expect(share(s.caught, s.mistakes), s.missed.join('\n')).toBeGreaterThanOrEqual(floor.caught));
  test('claims covered', () => expect(share(s.covered, s.claims), s.uncovered.join('\n')).toBeGreaterThanOrEqual(floor.coverage));
  test('tied to the right readings', () => expect(share(s.tied, s.covered), s.loose.join('\n')).toBeGreaterThanOrEqual(floor.tied));
  test('what is no claim stays quiet', () => expect(share(s.quiet, s.distractors), s.uncovered.join('\n')).toBeGreaterThanOrEqual(floor.quiet));
});

test('what is suggested undoes most mistakes that are caught in a number, a unit, a place or a direction', () => {
  const sum = (of: (s: (typeof scores)[number]) => number): number => scores.reduce((n, s) => n + of(s), 0);
  expect(share(sum((s) => s.undone), sum((s) => s.undoable))).toBeGreaterThanOrEqual(83);
});
