import { describe, expect, it } from 'vitest';
import { usualTargets } from '../../../../../backend/src/evaluation/alarm-performance/targets';
import { JournalPerformanceDesk } from '../../../../../backend/src/runner/performance/performance-desk';
import { smallSite } from '../../../../helpers/small-site';
import { JournalInMemory } from './journal-in-memory';

const site = smallSite();
const query = { fromMs: null, toMs: null, hall: null };

/** A desk that waits where it lets others run until it is let go on. */
function heldDesk() {
  const held: (() => void)[] = [];
  let isOpen = false;
  const desk = new JournalPerformanceDesk({
    journal: new JournalInMemory(),
    beganMs: () => NaN,
    site: () => site,
    nowMs: () => Date.UTC(2026, 4, 1),
    wallMs: () => 0,
    targets: usualTargets,
    propose: () => Promise.resolve({ chattering: new Map<string, null>(), fleeting: new Map<string, null>() }),
    pause: () => (isOpen ? Promise.resolve() : new Promise((resolve) => held.push(resolve))),
  });
  const open = (): void => {
    isOpen = true;
    for (const one of held) one();
  };
  return { desk, held, open };
}

describe('figures of alarm performance', () => {
  it('are reckoned for one who asks at a time, a few wait, and more are refused', async () => {
    const { desk, held, open } = heldDesk();
    const asked = Array.from({ length: 12 }, () => desk.report(query));
    const refused = await Promise.all(asked.slice(9));
    expect(refused.map((one) => !one.ok && one.fault.code)).toEqual(Array(3).fill('TOO_MANY_REQUESTS'));
    expect(held).toHaveLength(1);
    open();
    const made = await Promise.all(asked.slice(0, 9));
    expect(made.map(({ ok }) => ok)).toEqual(Array(9).fill(true));
    expect((await desk.report(query)).ok).toBe(true);
  });
});
