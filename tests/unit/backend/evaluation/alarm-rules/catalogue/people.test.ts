import { describe, expect, it } from 'vitest';
import type { CompiledUnit } from '../../../../../../backend/src/evaluation/site/compiled-site';
import { RuleBench } from '../rule-bench';

describe('SET-1', () => {
  const points = ['control.manual', 'supply.setPoint', 'supplyTank.setPoint', 'separator.setPoint'];
  const bench = (): RuleBench =>
    new RuleBench({
      also: points,
      values: {
        'control.manual': 0,
        'supply.setPoint': 36.3,
        'supplyTank.setPoint': 74_000,
        'separator.setPoint': 32_000,
      },
    }).run(30);

  it.each([
    ['supply.setPoint', 38, 'Set point of supply temperature: 36.3 → 38.0 °C.'],
    ['supplyTank.setPoint', 70_000, 'Set point of supply tank pressure: 74.0 → 70.0 kPa.'],
    ['separator.setPoint', 20_000, 'Set point of separator pressure: 32.0 → 20.0 kPa.'],
  ])('is an alert 2 s after %s changed, for an hour, and tells both', (point, value, text) => {
    const changed = bench().set(point, value);
    expect(changed.secondsUntil('SET-1', 10)).toBe(3);
    expect(changed.alert('SET-1')?.detail).toBe(text);
    expect(changed.hours(0.9).active('SET-1')).toBe(true);
    expect(changed.hours(0.2).active('SET-1')).toBe(false);
  });

  it('goes where the set point is put back', () => {
    const changed = bench().set('separator.setPoint', 20_000).run(10);
    changed.set('separator.setPoint', 32_000);
    expect(changed.secondsUntilGone('SET-1', 10)).toBe(3);
  });

  it('stands for as long as something is in hand', () => {
    const byHand = bench().set('control.manual', 1);
    expect(byHand.secondsUntil('SET-1', 10)).toBe(3);
    expect(byHand.hours(5).alert('SET-1')?.detail).toBe('In hand, bypassed or local.');
    expect(byHand.bad('control.manual').run(60).active('SET-1')).toBe(true);
    expect(byHand.set('control.manual', 0).run(10).active('SET-1')).toBe(false);
  });

  it('is not raised at the start, nor by a set point that is lost and comes back', () => {
    const lost = bench();
    for (const point of points) lost.bad(point);
    lost.run(600).set('separator.setPoint', 32_000).set('supply.setPoint', 36.3);
    expect(lost.run(60).active('SET-1')).toBe(false);
  });
});

describe('XFER-1 of alternating tanks', () => {
  const tanks = ['a', 'b'];
  const shapeB = (unit: CompiledUnit, slotOf: (point: string) => number): CompiledUnit => ({
    ...unit,
    shape: 'b',
    tanks: unit.tanks.map((tank) => ({ ...tank, slot: { ...tank.slot, filling: slotOf(`tank.${tank.id}.filling`) } })),
  });
  const bench = (): RuleBench =>
    new RuleBench({
      tanks: tanks.map((id) => ({ id, areaM2: 0.2 })),
      also: [...tanks.map((id) => `tank.${id}.filling`), 'chipPower'],
      unit: shapeB,
      values: { 'tank.a.filling': 1, 'tank.b.filling': 0, chipPower: 200_000, 'loop.flow': 0.002 },
    });
  let filling = 'a';
  const changeOver = (one: RuleBench): void => {
    one.set(`tank.${filling}.filling`, 0);
    filling = filling === 'a' ? 'b' : 'a';
    one.set(`tank.${filling}.filling`, 1);
  };
  const cycles = (one: RuleBench, count: number, seconds: number): RuleBench => {
    for (let cycle = 0; cycle < count; cycle += 1) {
      one.run(seconds);
      changeOver(one);
    }
    return one;
  };

  it('is raised as priority 2 once a quarter more than usual has gone without a change-over', () => {
    // 2 L/s for 40 s: 80 L a transfer. The change-over is seen a second later, 100 L are passed 51 s after, and 2 s of delay.
    const one = cycles(bench(), 8, 40);
    expect(one.all()).not.toContain('XFER-1');
    expect(one.secondsUntil('XFER-1', 80)).toBe(54);
    expect(one.alarm('XFER-1')).toMatchObject({ priority: 2, unitOfMeasure: 'm3' });
    expect(one.detail('XFER-1')).toMatch(/usual are 80 L/);
    changeOver(one);
    expect(one.secondsUntilGone('XFER-1', 20)).toBe(6);
  });

  it('goes by the water, so that a slower flow makes no transfer late', () => {
    const one = cycles(bench(), 8, 40).set('loop.flow', 0.001);
    expect(cycles(one, 4, 80).active('XFER-1')).toBe(false);
  });

  it('is raised as failed where the flow dies away before the water has gone', () => {
    const one = cycles(bench(), 8, 40).run(38).set('loop.flow', 0);
    expect(one.secondsUntil('XFER-1', 80)).toBe(46);
    expect(one.alarm('XFER-1')?.priority).toBe(2);
  });

  it('is raised as priority 3 where the tanks change over too often', () => {
    const one = cycles(cycles(bench(), 8, 40), 3, 15);
    expect(one.alarm('XFER-1')?.priority).toBe(3);
  });

  it('holds where the tanks are not known, is off when stopped, and is not there in shape (a)', () => {
    const lost = cycles(bench(), 8, 40).bad('loop.flow').bad('chipPower').run(300);
    expect(lost.active('XFER-1')).toBe(false);
    expect(cycles(bench(), 8, 40).mode('standby').run(300).active('XFER-1')).toBe(false);
    const shapeA = new RuleBench({ tanks: [], also: [] }).run(300);
    expect(shapeA.active('XFER-1')).toBe(false);
  });
});
