import { describe, expect, it } from 'vitest';
import { detailNow } from '../../../../../../backend/src/evaluation/pipeline/detail-of';
import { groupStep } from '../../../../../../backend/src/evaluation/pipeline/group-step';
import { RuleBench } from '../rule-bench';

const litre = 0.001;
const hourS = 3600;

/** A loop of one unit whose water a test moves; looked at each ten seconds. */
class Loop {
  private readonly bench: RuleBench;
  private water = 0.27;
  private noise = 1;

  constructor(separatorRoomM3: number | null = 0.09) {
    this.bench = new RuleBench({
      also: ['waterVolume', 'topUpRate', 'conductivity25'],
      design: { separatorAreaM2: 0.25, volumes: { ...noVolumes, separatorRoomM3, separatorUsualLevelM: 0.45 } },
      values: { waterVolume: 0.27, topUpRate: 0, conductivity25: 20e-4, 'separator.level': 0.45 },
    });
  }

  /** Lets hours pass while so many litres an hour run in. */
  hours(hours: number, litresPerHour = 0, topUpLitresPerHour = 0): this {
    this.bench.set('topUpRate', (topUpLitresPerHour * litre) / hourS);
    for (let second = 0; second < hours * hourS; second += 10) {
      this.bench.nowMs += 10_000;
      this.water += ((litresPerHour + topUpLitresPerHour) * litre * 10) / hourS;
      // Slosh of half a litre, to and fro.
      this.noise = (this.noise * 16807) % 2147483647;
      this.bench.set('waterVolume', this.water + (this.noise / 2147483647 - 0.5) * litre);
      groupStep(this.bench.pipeline, this.bench.nowMs);
    }
    return this;
  }

  /** So many litres at once. */
  step(litres: number): this {
    this.water += litres * litre;
    return this;
  }

  bad(hours: number): this {
    for (let second = 0; second < hours * hourS; second += 10) {
      this.bench.nowMs += 10_000;
      this.bench.bad('waterVolume');
      groupStep(this.bench.pipeline, this.bench.nowMs);
    }
    return this;
  }

  conductivity(microSiemensPerCm: number): this {
    this.bench.set('conductivity25', microSiemensPerCm * 1e-4);
    return this;
  }

  /** A restart forgets what the rule has learnt; the alarm is taken back. */
  restart(): this {
    const { loopWater } = this.bench.pipeline.plant;
    for (const cells of Object.values(loopWater) as Float64Array[]) cells.fill(Number.NaN);
    for (const cells of [loopWater.sum, loopWater.samples, loopWater.toppedUp, loopWater.judged]) cells.fill(0);
    return this;
  }

  get told(): boolean {
    return this.bench.active('TANK-4');
  }

  get detail(): string {
    const index = this.bench.pipeline.book.indexOfName(this.bench.alarm('TANK-4')?.alarm ?? '');
    return index === undefined ? '' : (detailNow(this.bench.pipeline, index) ?? '');
  }
}

const noVolumes = {
  supplyToReturnM3: null,
  waterM3: null,
  separatorGasM3: null,
  supplyTankGasM3: null,
  supplyTankUsableM3: null,
  supplyTankUsualLevelM: null,
};

describe('TANK-4', () => {
  it('tells 6 L a day within a day, with litres, a day’s rate, the date of full and the drift of conductivity', () => {
    const loop = new Loop().hours(6);
    loop.hours(12, 6 / 24);
    expect(loop.told).toBe(false);
    loop.conductivity(28).hours(12, 6 / 24);
    expect(loop.told).toBe(true);
    const [, litres, perDay] = /^([\d.]+) L more than before and no top-up, ([\d.]+) L a day\./.exec(loop.detail) ?? [];
    // The first half hour and some of the noise are missing from it.
    expect(Math.abs(Number(litres) - 6)).toBeLessThan(1.5);
    expect(Math.abs(Number(perDay) - 6)).toBeLessThan(1.5);
    // 90 L of room at 5 to 6 L a day, from 2 March on.
    expect(loop.detail).toMatch(/Tanks full on 2026-03-(1[6-9]|2[01]) /);
    expect(loop.detail).toContain('Conductivity has gone from 20 to 28 µS/cm meanwhile.');
  });

  it('is told also where the site file states no room of the separator: then without a date of full', () => {
    const loop = new Loop(null).hours(2).hours(2, 30);
    expect(loop.told).toBe(true);
    expect(loop.detail).toMatch(/^[\d.]+ L more than before and no top-up, [\d.]+ L\/min\.$/);
  });

  it('tells half a litre a minute within an hour', () => {
    expect(new Loop().hours(2).hours(1, 30).told).toBe(true);
  });

  it.each([
    ['air that pushes water up', 48],
    ['a bucket that nobody metered', 10],
    ['water that runs back', 80],
  ])('does not take %s for facility water, not in the hours after it either', (_what, litres) => {
    const loop = new Loop().hours(2).step(litres);
    for (let hour = 0; hour < 8; hour += 0.25) expect(loop.hours(0.25).told).toBe(false);
    // And what goes back goes back.
    expect(loop.step(-litres).hours(8).told).toBe(false);
  });

  it('does not take water that runs back for four minutes for facility water', () => {
    const loop = new Loop().hours(2).hours(1 / 15, 900);
    for (let hour = 0; hour < 4; hour += 0.25) expect(loop.hours(0.25).told).toBe(false);
  });

  it('is not raised by what the meter explains, and is by what it does not', () => {
    expect(new Loop().hours(2).hours(3, 0, 30).told).toBe(false);
    expect(new Loop().hours(2).hours(3, 30, 30).told).toBe(true);
  });

  it('ends where the water rises no more, though it stands where it was', () => {
    const loop = new Loop().hours(2).hours(2, 30);
    expect(loop.told).toBe(true);
    expect(loop.hours(12).told).toBe(false);
    expect(loop.hours(24).told).toBe(false);
  });

  it('stays while nothing is known, and while a step of air passes', () => {
    const loop = new Loop().hours(2).hours(2, 30).bad(12);
    expect(loop.told).toBe(true);
    expect(loop.hours(1, 30).step(40).hours(1, 30).told).toBe(true);
  });

  it('is not ended by a restart that has forgotten the level of before', () => {
    const loop = new Loop().hours(2).hours(2, 30).restart();
    for (let hour = 0; hour < 6; hour += 0.5) expect(loop.hours(0.5, 30).told).toBe(true);
    expect(loop.hours(12).told).toBe(false);
  });
});
