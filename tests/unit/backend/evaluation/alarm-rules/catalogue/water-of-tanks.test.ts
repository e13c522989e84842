import { describe, expect, it } from 'vitest';
import type { CompiledUnit } from '../../../../../../backend/src/evaluation/site/compiled-site';
import { RuleBench } from '../rule-bench';

const tanks = ['a', 'b'];
const shapeB = (unit: CompiledUnit, slotOf: (point: string) => number): CompiledUnit => ({
  ...unit,
  shape: 'b',
  tanks: unit.tanks.map((tank) => ({ ...tank, slot: { ...tank.slot, filling: slotOf(`tank.${tank.id}.filling`) } })),
});

/** 5 L/s change over each 40 s: 200 L a transfer. Together the tanks hold 300 L. */
const bench = (): RuleBench =>
  new RuleBench({
    tanks: tanks.map((id) => ({ id, areaM2: 0.5 })),
    without: ['separator.level', 'supplyTank.level', 'pump.inlet.pressure', 'supply.pressure', 'return.pressure'],
    also: [...tanks.map((id) => `tank.${id}.filling`), 'chipPower', 'waterVolume', 'gasLoad', 'gasAllowance'],
    unit: shapeB,
    values: { 'tank.a.filling': 1, 'tank.b.filling': 0, chipPower: 200_000, 'loop.flow': 0.005, waterVolume: 0.3 },
  }).mode('running');

/** Whole transfers; `heldM3` is what the tanks hold during each. */
function cycles(one: RuleBench, heldM3: readonly number[], seconds = 40): RuleBench {
  for (const held of heldM3) {
    one.set('waterVolume', held).run(seconds - 1);
    const fills = one.pipeline.state.value[one.pipeline.unitSlots[0]?.tankFilling[0] ?? -1] === 1;
    one
      .set('tank.a.filling', fills ? 0 : 1)
      .set('tank.b.filling', fills ? 1 : 0)
      .run(1);
  }
  return one;
}
const well = (): RuleBench => cycles(bench(), Array<number>(90).fill(0.3));

describe('the water that alternating tanks hold together', () => {
  it('is told as too much by TANK-2 at four fifths of the 100 L that halve a transfer: 80 L more than usual', () => {
    expect(well().set('waterVolume', 0.378).run(38).active('TANK-2')).toBe(false);
    const full = well().set('waterVolume', 0.382);
    expect(full.secondsUntil('TANK-2', 39)).toBe(31);
    expect(full.alarm('TANK-2')).toMatchObject({ priority: 3 });
    expect(full.detail('TANK-2')).toContain('The tanks hold 82 L more than usual.');
  });

  it('is told as too little by TANK-3 once a transfer can carry but 60 % of its usual 200 L: 80 L less', () => {
    expect(cycles(well(), [0.222, 0.222]).active('TANK-3')).toBe(false);
    const low = cycles(well(), [0.214, 0.214]);
    expect(low.active('TANK-3')).toBe(true);
    expect(low.active('TANK-2')).toBe(false);
  });

  it('stays what is usual while it runs in over hours', () => {
    // 0.5 L a transfer, 45 L an hour: 150 L in 300 transfers. By hand: the mean of all 390 is 58 L behind it, one of twenty 10 L.
    const rising = Array.from({ length: 300 }, (_, count) => 0.3 + 0.0005 * count);
    expect(cycles(well(), rising).active('TANK-2')).toBe(true);
  });

  it('clears nothing where the levels are lost, and says nothing before three transfers are known', () => {
    const full = well().set('waterVolume', 0.4).run(38);
    expect(full.active('TANK-2')).toBe(true);
    expect(full.bad('waterVolume').run(300).active('TANK-2')).toBe(true);
    expect(bench().set('waterVolume', 0.9).run(38).active('TANK-2')).toBe(false);
  });

  it.each([
    ['TANK-2', 0.405],
    ['TANK-3', 0.15],
  ])('is, as %s, the first-out of change-overs that come too often by it', (entry, heldM3) => {
    // Less than half the water goes with each transfer: by itself that is XFER-1.
    const often = cycles(cycles(well(), [heldM3, heldM3], 40), Array<number>(6).fill(heldM3), 18);
    const told = often.pipeline.book.standing().map((alarm) => [alarm.entry, alarm.foldedUnder === null]);
    expect(told.filter(([id]) => id === entry || id === 'XFER-1').sort()).toEqual([
      [entry, true],
      ['XFER-1', false],
    ]);
  });

  it.each([
    [30, true],
    [-30, true],
    [50, false],
    [-50, false],
  ])(
    'with %i L more than usual, a quarter of a transfer or less, says whether more gas is air (AIR-2: %s)',
    (litres, isAir) => {
      // 40 L are a fifth of the 200 L of a transfer; 60 free L/min more than is accounted for.
      const one = well()
        .set('gasAllowance', 0.001)
        .set('gasLoad', 0.002)
        .set('waterVolume', 0.3 + litres / 1000);
      expect(
        one
          .run(38)
          .run(32 * 60, undefined, 4)
          .active('AIR-2'),
      ).toBe(isAir);
    },
  );
});
