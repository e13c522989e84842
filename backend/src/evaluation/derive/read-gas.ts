import { gasComing, gasRemoved } from './gas';
import type { UnitFrame } from './unit-frame';
import { WindowSignal } from './memory/derive-memory';
import { gasInSeparator } from './gas';

/** Works out, once a second, what gas goes and what gas comes, with the inputs that both rest on in `frame.gasTally`. */
export function readGas(frame: UnitFrame, separatorLevelM: number): void {
  const { tally, gasTally, memory, plan } = frame;
  tally.begin();
  gasRemoved(frame, frame.gasRemoved);
  gasTally.reasons = tally.reasons;
  gasTally.oldestMs = tally.oldestMs;
  if (memory !== null && frame.elapsedS > 0) {
    const content = memory.signal(plan.unitIndex, WindowSignal.gasContent);
    memory.windows.push(memory.signal(plan.unitIndex, WindowSignal.gasRemoved), frame.gasRemoved.value);
    memory.windows.push(content, gasInSeparator(frame, separatorLevelM));
    memory.offTests.step(plan.unitIndex, runningSources(frame), memory.windows, content);
  }
  gasComing(frame, frame.gasRemoved, frame.gasComing);
  tally.begin();
}

/** 0 where every source is known to rest; NaN where that can't be known. */
function runningSources(frame: UnitFrame): number {
  const { tally, state, plan } = frame;
  const lead = plan.slot['vacuum.running'];
  const standby = plan.slot['vacuum.standby.running'];
  if (lead < 0) return tally.take(state, plan.slot['vacuum.speed']);
  return tally.take(state, lead) + (standby < 0 ? 0 : tally.take(state, standby));
}
