// Every check, in the order in which a reader would go through a record: what is stated, what was read, how it was tested, what is told.
import type { Check } from './check.js';
import { aboveLimit } from './above-limit.js';
import { backgroundAdds } from './background-adds.js';
import { backgroundTooNear } from './background-too-near.js';
import { belowRoom } from './below-room.js';
import { clockGivesWay } from './clock-gives-way.js';
import { currenciesDiffer } from './currencies-differ.js';
import { correctionStands } from './correction-stands.js';
import { correctionUnknown } from './correction-unknown.js';
import { curveFalls } from './curve-falls.js';
import { decibelsAveraged } from './decibels-averaged.js';
import { differenceAsTemperature } from './difference-as-temperature.js';
import { emptyColumn } from './empty-column.js';
import { heatBalance } from './heat-balance.js';
import { lowUndefined } from './low-undefined.js';
import { finerThanInstrument } from './finer-than-instrument.js';
import { idleNotSettled } from './idle-not-settled.js';
import { idleUnlike } from './idle-unlike.js';
import { impossibleMean } from './impossible-mean.js';
import { instrumentUnit } from './instrument-unit.js';
import { limitNotReached } from './limit-not-reached.js';
import { loadNotAboveIdle } from './load-not-above-idle.js';
import { loanUndisclosed } from './loan-undisclosed.js';
import { matrixHole } from './matrix-hole.js';
import { meanOfRates } from './mean-of-rates.js';
import { namesAlike } from './names-alike.js';
import { neverSteady } from './never-steady.js';
import { originUndisclosed } from './origin-undisclosed.js';
import { partAboveWhole } from './part-above-whole.js';
import { partsOutOfOrder } from './parts-out-of-order.js';
import { percentOfTemperature } from './percent-of-temperature.js';
import { percentOrPoints } from './percent-or-points.js';
import { powerDisagrees } from './power-disagrees.js';
import { priceOld } from './price-old.js';
import { priceUndated } from './price-undated.js';
import { readingsCopied } from './readings-copied.js';
import { roomDiffers } from './room-differs.js';
import { roomMissing } from './room-missing.js';
import { roundedTooEarly } from './rounded-too-early.js';
import { runAside } from './run-aside.js';
import { runCountsDiffer } from './run-counts-differ.js';
import { runLengthDiffers } from './run-length-differs.js';
import { runsDisagree } from './runs-disagree.js';
import { runsNotAsSaid } from './runs-not-as-said.js';
import { settingTwice } from './setting-twice.js';
import { settingWithoutEffect } from './setting-without-effect.js';
import { shareOutOfRange } from './share-out-of-range.js';
import { statedDirection } from './stated-direction.js';
import { statedUnit } from './stated-unit.js';
import { statedValue } from './stated-value.js';
import { statedUnderivable } from './stated-underivable.js';
import { stillWarming } from './still-warming.js';
import { targetMissed } from './target-missed.js';
import { tooSmallToMatter } from './too-small-to-matter.js';
import { unitMixed } from './unit-mixed.js';
import { unitUnlikely } from './unit-unlikely.js';
import { windowNotSteady } from './window-not-steady.js';
import { withinSpread } from './within-spread.js';
import { wrongBase } from './wrong-base.js';

export const checks: readonly Check[] = [
  statedValue,
  statedUnderivable,
  statedDirection,
  statedUnit,
  differenceAsTemperature,
  roundedTooEarly,
  wrongBase,
  percentOrPoints,
  percentOfTemperature,
  impossibleMean,
  decibelsAveraged,
  meanOfRates,
  lowUndefined,
  correctionUnknown,
  correctionStands,
  withinSpread,
  tooSmallToMatter,
  unitUnlikely,
  unitMixed,
  finerThanInstrument,
  instrumentUnit,
  loadNotAboveIdle,
  belowRoom,
  aboveLimit,
  targetMissed,
  limitNotReached,
  settingTwice,
  settingWithoutEffect,
  partAboveWhole,
  partsOutOfOrder,
  shareOutOfRange,
  powerDisagrees,
  heatBalance,
  backgroundTooNear,
  backgroundAdds,
  runsDisagree,
  idleUnlike,
  runCountsDiffer,
  runLengthDiffers,
  runsNotAsSaid,
  readingsCopied,
  runAside,
  roomMissing,
  roomDiffers,
  matrixHole,
  namesAlike,
  idleNotSettled,
  stillWarming,
  neverSteady,
  windowNotSteady,
  clockGivesWay,
  emptyColumn,
  curveFalls,
  priceUndated,
  priceOld,
  currenciesDiffer,
  originUndisclosed,
  loanUndisclosed,
];
