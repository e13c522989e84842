import { reasonBit } from '../../slots/quality-reasons';
import type { DerivedPointOfUnit } from '../derived-point';
import type { PlainPoint } from '../plan-points';
import { blocksLearnt, noteWatched } from '../sample-watch';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { shiftSignals } from '../watched-signals';
import { writePoint } from '../write-point';

/**
 * How far a figure has gone from what it was in the known-good period: the larger CUSUM of its means of ten minutes over the
 * limit, with its sign. Beyond ±1 it has surely changed. It is a figure for engineers: no alarm rests on it alone.
 */
export const deriveShift =
  (signal: (typeof shiftSignals)[number], target: PlainPoint): DerivedPointOfUnit['derive'] =>
  (frame: UnitFrame): void => {
    if (!frame.watchTurn) return;
    const { tally, state, plan, memory } = frame;
    const place = shiftSignals.indexOf(signal);
    tally.begin();
    tally.take(state, plan.slot[signal]);
    // Its age is that of the last mean, not of the figure now.
    tally.oldestMs = Infinity;
    if (!tally.isBad()) {
      noteWatched(frame, memory?.shifts.isLearnt(plan.unitIndex, place, blocksLearnt(frame)) === true);
      const mean = memory?.watch.meanOf(plan.unitIndex, place) ?? Number.NaN;
      if (!tally.isBad() && Number.isNaN(mean)) tally.note(reasonBit.inputBad, Infinity);
    }
    const share = memory?.shifts.share(plan.unitIndex, place) ?? Number.NaN;
    if (!tally.isBad() && Number.isNaN(share)) tally.note(reasonBit.undefined, Infinity);
    writePoint(frame, plan.slot[target], share, Number.NaN);
  };

export const hasShift =
  (signal: (typeof shiftSignals)[number]) =>
  ({ slot }: UnitPlan): boolean =>
    slot[signal] >= 0;

/** What is held against the known-good period needs the site file to say which period that is. */
export const hasKnownGood = ({ unit }: UnitPlan): boolean => unit.design.knownGood !== null;
