import { expect, it } from 'vitest';
import { awakeClock } from '../../../../frontend/src/feed/awake-ms';

function bench() {
  const clocks = { monotonic: 500, wall: 1_000_000 };
  const nowMs = awakeClock(
    () => clocks.monotonic,
    () => clocks.wall,
  );
  return { clocks, nowMs };
}

it('goes as the monotonic clock does while both clocks go', () => {
  const { clocks, nowMs } = bench();
  for (let tick = 0; tick < 1000; tick += 1) {
    clocks.monotonic += 200;
    clocks.wall += tick % 2 === 0 ? 200 : 201;
    nowMs();
  }
  expect(nowMs()).toBe(200_500);
});

it('counts the hours in which the machine slept and its monotonic clock stood still', () => {
  const { clocks, nowMs } = bench();
  clocks.wall += 6 * 3_600_000;
  expect(nowMs()).toBe(500 + 6 * 3_600_000);
  clocks.monotonic += 200;
  clocks.wall += 200;
  expect(nowMs()).toBe(700 + 6 * 3_600_000);
});

it('counts a sleep once where the monotonic clock goes on in it', () => {
  const { clocks, nowMs } = bench();
  clocks.wall += 3_600_000;
  clocks.monotonic += 3_600_000;
  expect(nowMs()).toBe(3_600_500);
});

it('takes no harm from time that is set back', () => {
  const { clocks, nowMs } = bench();
  clocks.wall -= 3_600_000;
  clocks.monotonic += 200;
  expect(nowMs()).toBe(700);
  clocks.wall += 200;
  clocks.monotonic += 200;
  expect(nowMs()).toBe(900);
});
