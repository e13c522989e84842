import type { Mode } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { groupStep } from '../../../../../../backend/src/evaluation/pipeline/group-step';
import { RuleBench } from '../rule-bench';

const litre = 0.001;
const hourS = 3600;

/** A loop of one unit that nobody meters; looked at each ten seconds. */
class Loop {
  private readonly bench = new RuleBench({
    also: ['waterVolume', 'topUpRate', 'conductivity25'],
    values: { topUpRate: 0, conductivity25: 20e-4 },
  });
  private water = 0.05;

  /** Lets hours pass in a mode while so many litres an hour run in. */
  hours(hours: number, mode: Mode, litresPerHour = 0): this {
    this.bench.mode(mode);
    for (let second = 0; second < hours * hourS; second += 10) {
      this.bench.nowMs += 10_000;
      this.water += (litresPerHour * litre * 10) / hourS;
      this.bench.set('waterVolume', this.water);
      groupStep(this.bench.pipeline, this.bench.nowMs);
    }
    return this;
  }

  get told(): boolean {
    return this.bench.active('TANK-4');
  }
}

/** 270 L within 40 minutes. */
const fill = 405;

describe('TANK-4 and a loop that is filled', () => {
  it('is not raised by a fill without a meter, nor in the hours after it', () => {
    const loop = new Loop().hours(2, 'off');
    for (let minute = 0; minute < 40; minute += 5) expect(loop.hours(1 / 12, 'filling', fill).told).toBe(false);
    for (let hour = 0; hour < 8; hour += 0.25) expect(loop.hours(0.25, 'running').told).toBe(false);
  });

  it('is raised by as much water in a mode in which nobody puts any in', () => {
    for (const mode of ['off', 'vented', 'standby', 'running'] as const)
      expect(
        new Loop()
          .hours(2, 'off')
          .hours(2 / 3, mode, fill)
          .hours(1, mode).told,
      ).toBe(true);
  });

  it('tells what runs in after a fill as soon as ever', () => {
    const loop = new Loop().hours(2, 'running').hours(2 / 3, 'filling', fill);
    expect(loop.hours(1, 'running', 30).told).toBe(true);
  });

  it('stands while the loop is drained and filled, and is judged by what rises afterwards', () => {
    const loop = new Loop().hours(2, 'running').hours(2, 'running', 30);
    expect(loop.told).toBe(true);
    expect(loop.hours(6, 'draining', -30).told).toBe(true);
    expect(loop.hours(6, 'filling', 30).told).toBe(true);
    expect(loop.hours(1, 'running', 30).told).toBe(true);
    expect(loop.hours(12, 'running').told).toBe(false);
  });
});
