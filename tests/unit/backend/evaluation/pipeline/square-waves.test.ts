import { describe, expect, it } from 'vitest';
import {
  catalogue,
  groupEntries,
  systemEntries,
  unitEntries,
} from '../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import type { Limits } from '../../../../../backend/src/evaluation/alarm-rules/entry';
import { createFinding } from '../../../../../backend/src/evaluation/alarm-rules/finding';
import { Verdict } from '../../../../../backend/src/evaluation/alarm-rules/verdict';
import { createPipelineState } from '../../../../../backend/src/evaluation/pipeline/pipeline-state';
import { raiseAndClear, unfolded } from '../../../../../backend/src/evaluation/pipeline/raise-and-clear';
import { plantSite, startMs } from './plant';

const tickMs = 1000;
const ticksOf = (delayMs: number): number => Math.ceil(delayMs / tickMs);

/** One alarm behind the delays of an entry; its condition is what the test says, second by second. */
class Wave {
  private readonly pipeline = createPipelineState(plantSite(), 'wall');
  private readonly finding = createFinding();
  private nowMs = startMs;

  constructor(private readonly limits: Limits) {}

  send(verdict: Verdict, ticks: number): this {
    for (let tick = 0; tick < ticks; tick += 1) {
      this.finding.verdict = verdict;
      const { onDelayMs, offDelayMs } = this.limits;
      const judged = {
        alarm: 0,
        onDelayMs,
        offDelayMs,
        unitOfMeasure: null,
        priority: 2,
        enabled: true,
        detail: null,
      } as const;
      raiseAndClear(this.pipeline, judged, this.finding, unfolded, this.nowMs);
      this.nowMs += tickMs;
    }
    return this;
  }

  raised(): number {
    return this.pipeline.transitions.filter(({ to }) => to === 'unacknowledged').length;
  }

  cleared(): number {
    return this.pipeline.transitions.filter(({ cause }) => cause === 'conditionClear').length;
  }
}

const waves = 5;
const entries = Object.values(catalogue).map(({ id, defaults }) => [id, defaults] as const);

describe('the list of entries', () => {
  it('is the whole catalogue', () => {
    expect(entries.length).toBeGreaterThanOrEqual(unitEntries.length + groupEntries.length + systemEntries.length + 2);
  });
});

// A condition that lasts n ticks is seen at n moments, the last of them n − 1 ticks after the first.
describe.each(entries.filter(([, { onDelayMs }]) => onDelayMs > 0))('the on-delay of %s', (_, limits) => {
  const ticks = ticksOf(limits.onDelayMs);

  it('lets nothing through that lasts one tick too short, however often it comes', () => {
    const wave = new Wave(limits);
    for (let i = 0; i < waves; i += 1) wave.send(Verdict.yes, ticks).send(Verdict.no, 1);
    expect(wave.raised()).toBe(0);
  });

  it('lets through what lasts one tick longer, once, and once only while it lasts', () => {
    expect(new Wave(limits).send(Verdict.yes, ticks + 1).raised()).toBe(1);
    expect(new Wave(limits).send(Verdict.yes, 3 * ticks + 10).raised()).toBe(1);
  });

  it('is neither begun anew nor ended by a bad value in between', () => {
    expect(
      new Wave(limits)
        .send(Verdict.yes, 1)
        .send(Verdict.hold, 3 * ticks)
        .raised(),
    ).toBe(0);
    expect(new Wave(limits).send(Verdict.yes, ticks).send(Verdict.hold, 1).send(Verdict.yes, 1).raised()).toBe(1);
  });
});

describe.each(entries.filter(([, { offDelayMs }]) => offDelayMs > 0))('the off-delay of %s', (_, limits) => {
  const ticks = ticksOf(limits.offDelayMs);
  const raised = (): Wave => new Wave(limits).send(Verdict.yes, ticksOf(limits.onDelayMs) + 1);

  it('clears nothing that is gone one tick too short, and tells nothing anew, however often it goes', () => {
    const wave = raised();
    for (let i = 0; i < waves; i += 1) wave.send(Verdict.no, ticks).send(Verdict.yes, 1);
    expect([wave.cleared(), wave.raised()]).toEqual([0, 1]);
  });

  it('clears what is gone one tick longer, once', () => {
    expect(
      raised()
        .send(Verdict.no, ticks + 1)
        .cleared(),
    ).toBe(1);
    expect(
      raised()
        .send(Verdict.no, 3 * ticks + 10)
        .cleared(),
    ).toBe(1);
  });

  it('begins anew with every bad value: gone has to be seen all the time', () => {
    const wave = raised();
    for (let i = 0; i < waves; i += 1) wave.send(Verdict.no, ticks).send(Verdict.hold, 1);
    expect(wave.cleared()).toBe(0);
    expect(wave.send(Verdict.hold, 10 * ticks).cleared()).toBe(0);
  });
});

describe.each(entries.filter(([, { onDelayMs, offDelayMs }]) => onDelayMs === 0 || offDelayMs === 0))(
  '%s, without one of the delays',
  (_, limits) => {
    it('is raised and cleared at once where it has none', () => {
      const wave = new Wave(limits).send(Verdict.yes, ticksOf(limits.onDelayMs) + 1);
      expect(wave.raised()).toBe(1);
      expect(wave.send(Verdict.no, ticksOf(limits.offDelayMs) + 1).cleared()).toBe(1);
    });
  },
);
