import { describe, expect, it } from 'vitest';
import { RuleBench } from '../alarm-rules/rule-bench';

const bench = (): RuleBench =>
  new RuleBench({
    also: ['timeToEmpty', 'supplyTankRate', 'pump.standby.running'],
    values: { 'pump.speed': 1, 'pump.running': 1, timeToEmpty: 4 * 3600 },
  })
    .mode('running')
    .run(30);

describe('what gets worse while it stands under an alarm that is over', () => {
  it('stands for itself as soon as it is more urgent than that one', () => {
    const plant = bench().set('timeToEmpty', 500).set('pump.running', 0).run(30);
    expect(plant.alarm('PUMP-1')).toMatchObject({ active: true, priority: 2 });
    expect(plant.alarm('TANK-1')).toMatchObject({ priority: 2, foldedUnder: plant.alarm('PUMP-1')?.alarm });
    plant.set('pump.running', 1).run(20);
    expect(plant.alarm('PUMP-1')?.active).toBe(false);
    expect(plant.alarm('TANK-1')).toMatchObject({ active: true, foldedUnder: plant.alarm('PUMP-1')?.alarm });
    plant.set('timeToEmpty', 170).run(1);
    expect(plant.alarm('TANK-1')).toMatchObject({ priority: 1, foldedUnder: null });
  });
});

/** The flow was lost and is back, not acknowledged; its hot water boils at the inlet of the pump. */
function boilsAfterLostFlow(): RuleBench {
  const plant = new RuleBench({ values: { lowerWallMargin: 9000, chipPower: 240_000 } }).mode('running').run(60);
  const { site, state, unitSlots } = plant.pipeline;
  state.where[unitSlots[0]?.lowerWallMargin ?? -1] = site.units[0]?.pumpInletPlace ?? -1;
  const flow = state.value[unitSlots[0]?.loopFlow ?? -1] ?? Number.NaN;
  plant.set('loop.flow', 0).run(10).set('loop.flow', flow).run(20).set('lowerWallMargin', -100).run(10);
  expect(plant.alarm('FLOW-2')).toMatchObject({ active: false, state: 'returnedUnacknowledged' });
  expect(plant.alarm('BOIL-2')).toMatchObject({ where: 'pump inlet', foldedUnder: 'm1:FLOW-2' });
  return plant;
}

describe('a first-out that comes again while what followed from it stands', () => {
  it('is never told as following from itself, and one of the two stands for itself', () => {
    const plant = boilsAfterLostFlow();
    const { transitions } = plant.pipeline;
    transitions.length = 0;
    plant.set('loop.flow', 0).run(10);
    const again = transitions.filter(({ alarm, to }) => alarm === 'm1:FLOW-2' && to === 'unacknowledged');
    expect(again).toHaveLength(1);
    expect(again[0]?.foldedUnder).not.toBe('m1:FLOW-2');
    const parents = ['FLOW-2', 'BOIL-2'].map((entry) => plant.alarm(entry)?.foldedUnder);
    expect(parents).toEqual(['m1:BOIL-2', null]);
  });
});

describe('a flow that is lost while the inlet of the pump boils', () => {
  const boils = (): RuleBench => {
    const plant = new RuleBench({ values: { lowerWallMargin: 9000, chipPower: 240_000 } }).mode('running').run(60);
    const { site, state, unitSlots } = plant.pipeline;
    state.where[unitSlots[0]?.lowerWallMargin ?? -1] = site.units[0]?.pumpInletPlace ?? -1;
    return plant.set('lowerWallMargin', -100).run(30);
  };

  it('follows from that while it calls, and calls for itself where that was acknowledged before', () => {
    expect(boils().set('loop.flow', 0).run(10).alarm('FLOW-2')?.foldedUnder).toBe('m1:BOIL-2');
    const known = boils();
    known.pipeline.book.acknowledge('m1:BOIL-2', { operator: 'Ada', station: 'desk', comment: '' }, known.nowMs);
    known.run(5).set('loop.flow', 0).run(10);
    expect(known.alarm('BOIL-2')).toMatchObject({ active: true, state: 'acknowledged' });
    expect(known.alarm('FLOW-2')).toMatchObject({ active: true, foldedUnder: null });
  });
});

describe('a standby that is lost while the vacuum source stands tripped', () => {
  const values = {
    ...{ 'vacuum.command': 1, 'pump.command': 1, 'pump.available': 1, 'vacuum.available': 1 },
    ...{ 'vacuum.standby.running': 0, 'pump.standby.running': 0 },
  };
  const tripped = (): RuleBench =>
    new RuleBench({ also: Object.keys(values), values })
      .run(30)
      .set('vacuum.running', 0)
      .set('vacuum.standby.running', 1)
      .run(10);

  it('follows from the trip at first, and calls for itself once that is known and old', () => {
    expect(tripped().set('pump.available', 0).run(90).alarm('PUMP-2')?.foldedUnder).toBe('m1:VSRC-1');
    const known = tripped();
    known.pipeline.book.acknowledge('m1:VSRC-1', { operator: 'Ada', station: 'desk', comment: '' }, known.nowMs);
    known.run(400).set('pump.available', 0).run(90);
    expect(known.alarm('VSRC-1')).toMatchObject({ active: true, state: 'acknowledged' });
    expect(known.alarm('PUMP-2')).toMatchObject({ active: true, foldedUnder: null });
  });
});
