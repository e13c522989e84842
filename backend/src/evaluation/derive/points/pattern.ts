import { reasonBit } from '../../slots/quality-reasons';
import { blocksLearnt, noteWatched } from '../sample-watch';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { patternSignals } from '../watched-signals';
import { writePoint } from '../write-point';

/** T² of the last means of ten minutes along what the signals do together, over its limit: more of what is usual. */
export function derivePatternDistance(frame: UnitFrame): void {
  write(frame, frame.plan.slot.patternDistance, shareOf(frame, 'along'), true);
}

/** What the usual pattern leaves over (SPE), over its limit: a relation between signals has broken. */
export function derivePatternResidual(frame: UnitFrame): void {
  const all = Number.isNaN(shareOf(frame, 'off')) && !Number.isNaN(shareOf(frame, 'along'));
  write(frame, frame.plan.slot.patternResidual, shareOf(frame, 'off'), !all);
}

const shareOf = ({ memory, plan }: UnitFrame, way: 'along' | 'off'): number =>
  memory?.pattern[way][plan.unitIndex] ?? Number.NaN;

/** `applies`: false where the pattern leaves nothing over. */
function write(frame: UnitFrame, target: number, share: number, applies: boolean): void {
  if (!frame.watchTurn) return;
  const { tally, state, plan, memory } = frame;
  tally.begin();
  for (const point of patternSignals) if (plan.slot[point] >= 0) tally.take(state, plan.slot[point]);
  tally.oldestMs = Infinity;
  if (!tally.isBad()) {
    noteWatched(frame, memory?.pattern.isLearnt(plan.unitIndex, blocksLearnt(frame)) === true);
    // The first mean after the learning ends it and judges nothing; one with a gap says nothing.
    if (!tally.isBad() && Number.isNaN(share))
      tally.note(applies ? reasonBit.warming : reasonBit.notApplicable, Infinity);
  }
  writePoint(frame, target, share, Number.NaN);
}

/** Fewer signals make no pattern: own rule. */
export const hasPattern = ({ slot }: UnitPlan): boolean =>
  patternSignals.filter((point) => slot[point] >= 0).length >= 3;
