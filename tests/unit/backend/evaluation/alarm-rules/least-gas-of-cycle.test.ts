import { expect, it } from 'vitest';
import {
  followLeastGas,
  leastGas,
} from '../../../../../backend/src/evaluation/alarm-rules/air-step/least-gas-of-cycle';
import type { UnitContext } from '../../../../../backend/src/evaluation/alarm-rules/judge-context';
import { RuleMemory } from '../../../../../backend/src/evaluation/alarm-rules/rule-memory';

/** Gas load of each second, free L/min; the least of the cycle before is given after the last. Cycles of a minute, as none is known. */
function leastAfter(seconds: readonly number[]): number {
  const state = { value: new Float64Array(1), reasons: new Int32Array(1) };
  const context = {
    ...{ memory: new RuleMemory(1), alarm: 0, nowMs: 0, unitIndex: 0, slots: { gasLoad: 0 }, state },
    ...{ permits: { count: [0] }, plant: { transfers: { usualTime: [Number.NaN] } } },
  };
  for (const gas of seconds) {
    state.value[0] = gas;
    followLeastGas(context as unknown as UnitContext);
    context.nowMs += 1000;
  }
  return leastGas(context as unknown as UnitContext);
}

const cycle = (least: number): number[] =>
  Array.from({ length: 61 }, (_, second) => (second === 20 ? least : least + 200));

it('is the least of the whole cycle before, and not known before one', () => {
  expect(leastAfter(cycle(30))).toBeNaN();
  expect(leastAfter([...cycle(30), ...cycle(45), 300])).toBe(45);
});

it('keeps the least where one second after it is not known', () => {
  const gap = cycle(30);
  gap[40] = Number.NaN;
  expect(leastAfter([...gap, 300])).toBe(30);
});
