// A mean frame rate that is not frames over time.
import { isFact } from '../facts/index.js';
import { convert, Exact, show, unit } from '../quantities/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import { measured } from './measured.js';
import { reportStated } from './stated.js';
import { derivation, readingPlaces, tell } from './words.js';

export const meanOfRates: Check = {
  name: 'mean-of-rates',
  says: 'A mean frame rate is the mean of rates instead of frames over time.',
  why: 'A fast stretch counts by its frames and not by its time: frames of 10, 10, 10, 10 and 60 ms are 5 frames in 0.1 s, 50 fps, while the mean of their rates is 83. Over several workloads a plain mean holds only if each ran for the same time.',
  severity: 'warning',
  thresholds: ['frames-over-time'],
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        frame_rate/average: {load: 50.0 50.0 50.0 fps}
        frame_time/average: {load: 20.0 20.0 20.0 ms}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}, village: {name: Village}}
    readings:
      - for: {setup: bench, workload: scene}
        frame_rate/average: {load: 83.3 83.3 83.3 fps} # expect
        frame_time/average: {load: 20.0 20.0 20.0 ms}
      - for: {setup: bench, workload: village}
        frame_rate/average: {load: 30.0 30.0 30.0 fps}
    stated:
      - {mean: [bench//scene/frame_rate/average/load, bench//village/frame_rate/average/load], is: 56.7 fps} # expect
  `) },
  run(context) {
    return [
      ...reportStated(context, 'mean-of-rates', (w) => (w.why === 'frames over time'
        ? `says ${w.said}, the mean of the frames' rates; frames over time are ${w.suggest}`
        : `says ${w.said}, the plain mean of rates; with as many frames of each it is ${w.suggest} (${w.why}), and only with equal times is it ${w.said}`)),
      ...fromReadings(context),
    ];
  },
};

function fromReadings({ facts, limits }: Context): Report[] {
  const allowed = Exact.of(1).plus(limits.share('frames-over-time'));
  return measured(facts).flatMap(({ key, at, readings, mean }) => {
    if (mean?.unit.dimension !== 'frame-rate' || /low|min|max|peak|1pct/.test(at.part)) return [];
    const beside = facts.sameBut(key, 'measure').map((k) => facts.value(k)).find((f) => isFact(f) && f.unit.dimension === 'duration' && /frame/.test(f.subject));
    if (!isFact(beside) || beside.value.sign() <= 0) return [];
    const right = Exact.of(1).over(convert(beside.value, beside.unit, unit('s'))!);
    if (mean.value.compare(right.times(allowed)) <= 0) return [];
    const suggest = show(right, mean.unit, mean.decimals);
    return [{
      place: readings[0]!.place, subject: key, said: mean.shown, recorded: suggest, suggest, derivation: `1 ÷ ${derivation(beside)}`,
      message: `${tell(facts.about, key)} says ${mean.shown}, frames over time are ${suggest} (1 ÷ ${beside.shown})`,
      slip: 'the rates of the frames were averaged instead of their times', related: readingPlaces(beside.readings),
    }];
  });
}
