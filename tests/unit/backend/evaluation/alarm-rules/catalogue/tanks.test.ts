import { describe, expect, it } from 'vitest';
import { reasonBit } from '../../../../../../backend/src/evaluation/slots/quality-reasons';
import { RuleBench } from '../rule-bench';

const lpm = 1 / 60_000;
const design = {
  separatorAreaM2: 0.25,
  supplyTankAreaM2: 0.3,
  volumes: {
    supplyToReturnM3: 0.28,
    waterM3: 0.488,
    separatorGasM3: 0.51,
    supplyTankGasM3: 0.08,
    supplyTankUsableM3: 0.08,
    separatorRoomM3: 0.09,
    supplyTankUsualLevelM: 0.5,
    separatorUsualLevelM: 0.45,
  },
};

describe('TANK-1', () => {
  const also = ['timeToEmpty', 'supplyTankRate', 'filterResistance'];
  const bench = (): RuleBench =>
    new RuleBench({ also, design, values: { 'pump.speed': 1, 'pump.running': 1, timeToEmpty: 4 * 3600 } })
      .mode('running')
      .run(30);

  it('says when the tank is empty, by how much it falls, and names a loaded filter', () => {
    const falling = bench()
      .set('timeToEmpty', 1500)
      .set('supplyTankRate', -20 * lpm)
      .set('filterResistance', 2.9);
    expect(falling.secondsUntil('TANK-1', 30)).toBe(16);
    // 1500 s is 25 min: over ten minutes, priority 3. The start is at midnight UTC, 46 s ago.
    expect(falling.alarm('TANK-1')).toMatchObject({ priority: 3, value: 1500 });
    expect(falling.detail('TANK-1')).toBe(
      'Tank empty at 00:25 UTC, in 25 min. It loses 20 L/min. The filter is at 2.9 times its clean resistance.',
    );
  });

  it('asks for more as the time runs out: priority 2 under ten minutes, 1 under three', () => {
    const falling = bench().set('timeToEmpty', 1500).run(20);
    falling.set('timeToEmpty', 500).run(1);
    expect(falling.alarm('TANK-1')?.priority).toBe(2);
    falling.set('timeToEmpty', 170).run(1);
    expect(falling.alarm('TANK-1')?.priority).toBe(1);
  });

  it('is not raised while the pump has speed left, and is raised where the pump stands', () => {
    expect(bench().set('pump.speed', 0.8).set('timeToEmpty', 600).run(60).active('TANK-1')).toBe(false);
    const tripped = bench().set('pump.speed', 0).set('pump.running', 0).set('timeToEmpty', 600).run(60);
    expect(tripped.active('TANK-1')).toBe(true);
  });

  it('takes a pump without a run contact by its speed: it catches up at four fifths, and stands at none', () => {
    const byDrive = (speed: number): RuleBench =>
      new RuleBench({
        also,
        design,
        without: ['pump.running', 'pump.inlet.pressure', 'supply.pressure', 'return.pressure'],
        values: { 'pump.speed': speed, timeToEmpty: 600 },
      })
        .mode('running')
        .run(60);
    expect(byDrive(0.8).active('TANK-1')).toBe(false);
    expect(byDrive(0).active('TANK-1')).toBe(true);
  });

  it('clears where the tank no longer falls, and holds where its level is lost', () => {
    const falling = bench().set('timeToEmpty', 600).run(30);
    const slot = falling.pipeline.unitSlots[0]?.timeToEmpty ?? -1;
    expect(falling.bad('timeToEmpty').run(120).active('TANK-1')).toBe(true);
    falling.pipeline.state.reasons[slot] = reasonBit.notApplicable;
    expect(falling.run(70).active('TANK-1')).toBe(false);
  });
});

describe('TANK-2 and TANK-3', () => {
  const bench = (separator = 0.45): RuleBench =>
    new RuleBench({
      also: ['separatorRate', 'supplyTankRate', 'loopWaterRate', 'topUpRate', 'timeToFull'],
      design,
      values: { 'separator.level': separator, 'supplyTank.level': 0.5, separatorRate: 0, supplyTankRate: 0 },
    })
      .mode('running')
      .run(30);

  it('is raised half a minute after four fifths of the room are taken, in every mode', () => {
    // 0.45 m + 0.8 × 0.09 m³ / 0.25 m² = 0.738 m
    for (const mode of ['running', 'off', 'draining'] as const) {
      // A step of centimetres would be air that pushes water up, and that is another alarm.
      const high = bench(0.735).mode(mode).run(60).set('separator.level', 0.739);
      expect(high.secondsUntil('TANK-2', 60)).toBe(31);
    }
    expect(bench(0.737).run(120).active('TANK-2')).toBe(false);
  });

  it('is not raised by a level that air has pushed up', () => {
    const cut = bench().set('separator.level', 0.75).run(40);
    expect(cut.active('AIR-1')).toBe(true);
    expect(cut.active('TANK-2')).toBe(false);
  });

  const withSwitch = (): RuleBench =>
    new RuleBench({
      also: ['separator.levelHigh'],
      design,
      values: { 'separator.level': 0.45, 'supplyTank.level': 0.5, 'separator.levelHigh': 0 },
    })
      .mode('running')
      .run(30);

  it('hears the switch before the source’s inlet while air comes in, though the level tells nothing then', () => {
    const cut = withSwitch().set('separator.level', 0.7).run(40);
    expect(cut.active('AIR-1')).toBe(true);
    expect(cut.active('TANK-2')).toBe(false);
    expect(cut.set('separator.levelHigh', 1).secondsUntil('TANK-2', 60)).toBe(31);
    // The switch goes back: the level itself is still not believed, so nothing ends by it.
    expect(cut.set('separator.levelHigh', 0).run(30).active('TANK-2')).toBe(true);
  });

  it.each([
    ['before it', 60, 'm1:TANK-2'],
    ['after it', 0, null],
  ])('is what fills the trap of the source where it came %s', (_when, fullForS, first) => {
    const values = { 'separator.level': 0.45, 'separator.levelHigh': 0, 'vacuum.trap.full': 0, openingsCarried: 2 };
    const one = new RuleBench({ also: Object.keys(values), design, values }).mode('running').run(30);
    one
      .set('separator.levelHigh', 1)
      .run(fullForS)
      .set('separator.levelHigh', fullForS > 0 ? 1 : 0);
    expect(one.set('vacuum.trap.full', 1).run(90).alarm('AIR-3')).toMatchObject({ active: true, foldedUnder: first });
  });

  it('ends by nothing that is not known: a bad switch, or a bad level beside a good switch', () => {
    const high = withSwitch().set('separator.levelHigh', 1).run(60);
    expect(high.active('TANK-2')).toBe(true);
    expect(high.bad('separator.levelHigh').run(300).active('TANK-2')).toBe(true);
    expect(high.set('separator.levelHigh', 0).bad('separator.level').run(300).active('TANK-2')).toBe(true);
    expect(high.set('separator.level', 0.45).run(90).active('TANK-2')).toBe(false);
  });

  it.each([
    ['separator.level', 0.26, 0.45],
    ['supplyTank.level', 0.29, 0.5],
  ])('TANK-3 is not ended by %s going bad while the other tank is well', (tank, low, usual) => {
    const one = bench().set(tank, low).run(90);
    expect(one.active('TANK-3')).toBe(true);
    expect(one.bad(tank).run(600).active('TANK-3')).toBe(true);
    expect(one.set(tank, usual).run(90).active('TANK-3')).toBe(false);
  });

  it('says where the sum rises without top-up that facility water may be coming in', () => {
    const high = bench(0.75)
      .set('loopWaterRate', 2 * lpm)
      .set('topUpRate', 0)
      .run(60);
    expect(high.detail('TANK-2')).toContain('rises by 2.0 L/min with no top-up to match');
  });

  it('is an alert where a level is low, and an alarm where the loop loses water', () => {
    const low = bench().set('separator.level', 0.26);
    expect(low.secondsUntil('TANK-3', 90)).toBe(61);
    expect(low.alarm('TANK-3')).toBeUndefined();
    expect(low.alert('TANK-3')).toMatchObject({ where: 'Separator' });
    // The sum sloshes: a minute of it is no loss.
    low
      .set('loopWaterRate', -1 * lpm)
      .run(60)
      .set('loopWaterRate', 1 * lpm)
      .run(60);
    expect(low.alarm('TANK-3')).toBeUndefined();
    low.set('loopWaterRate', -0.5 * lpm).run(400);
    expect(low.alarm('TANK-3')).toMatchObject({ active: true, priority: 3 });
    expect(low.alert('TANK-3')).toBeUndefined();
    expect(low.bad('separator.level').bad('supplyTank.level').run(120).active('TANK-3')).toBe(true);
    expect(low.set('separator.level', 0.45).set('supplyTank.level', 0.5).run(90).active('TANK-3')).toBe(false);
  });
});
