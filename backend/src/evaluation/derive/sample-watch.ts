import { modes } from '@ebbline/shared/contract/http-api';
import { reasonBit } from '../slots/quality-reasons';
import type { DeriveMemory } from './memory/derive-memory';
import type { UnitFrame } from './unit-frame';
import { blockMs, patternSignals, shiftSignals, watchedSignals } from './watched-signals';

const running = modes.indexOf('running');

/** Means of ten minutes that a period of so many hours has. */
const blocksOf = (hours: number): number => (hours * 3_600_000) / blockMs;

/** Means that are learnt from in this unit; NaN where no period is called sound. */
export const blocksLearnt = ({ plan }: UnitFrame): number => blocksOf(plan.unit.design.knownGood?.hours ?? Number.NaN);

/**
 * Looks at the watched signals, and hands each whole mean of ten minutes to the charts of change and pattern. A loop that does
 * not run is not looked at. Everything is as it was a second ago where it is not this unit's turn.
 */
export function sampleWatch(frame: UnitFrame, memory: DeriveMemory): void {
  const { plan, state, nowMs } = frame;
  const { knownGood } = plan.unit.design;
  const unit = plan.unitIndex;
  frame.watchTurn = memory.watch.isDue(unit, nowMs);
  if (knownGood === null || !frame.watchTurn) return;
  if (memory.goodFromMs[unit] !== knownGood.fromMs) {
    memory.goodFromMs[unit] = knownGood.fromMs;
    memory.shifts.forget(unit);
    memory.pattern.forget(unit);
  }
  if (memory.watch.begin(unit, nowMs) && nowMs - blockMs >= knownGood.fromMs) takeBlock(frame, memory);
  const mode = plan.slot.mode < 0 ? Number.NaN : (state.value[plan.slot.mode] ?? Number.NaN);
  if (!Number.isNaN(mode) && mode !== running) return;
  watchedSignals.forEach((point, signal) => {
    frame.tally.begin();
    memory.watch.take(unit, signal, frame.tally.take(state, plan.slot[point]));
  });
  frame.tally.begin();
}

function takeBlock(frame: UnitFrame, { watch, shifts, pattern }: DeriveMemory): void {
  const unit = frame.plan.unitIndex;
  const wanted = blocksLearnt(frame);
  shiftSignals.forEach((_, signal) => {
    shifts.take(unit, signal, watch.meanOf(unit, signal), wanted);
  });
  pattern.take(unit, (signal) => watch.meanOf(unit, shiftSignals.length + signal), patternHas(frame), wanted);
}

/** Which signals of the pattern the unit has sensors for. */
export const patternHas = ({ plan }: UnitFrame): readonly boolean[] =>
  patternSignals.map((point) => plan.slot[point] >= 0);

/** Source time that a figure of the last whole mean has, with `warming` where there is none yet. */
export function noteWatched(frame: UnitFrame, isLearnt: boolean): void {
  const closed = frame.memory?.watch.closed[frame.plan.unitIndex] ?? Number.NaN;
  if (!isLearnt || Number.isNaN(closed)) frame.tally.note(reasonBit.warming, Infinity);
  else frame.tally.note(0, (closed + 1) * blockMs);
}
