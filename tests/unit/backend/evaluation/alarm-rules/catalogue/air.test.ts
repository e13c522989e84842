import { describe, expect, it } from 'vitest';
import { RuleBench } from '../rule-bench';

const lpm = 1 / 60_000;

describe('AIR-1', () => {
  const hose = 164 * lpm;
  /** `counted`: the gas load that the reserve rests on, free L/min; it is a mean and lags. */
  const points = (gasLoad: number, counted: number): Record<string, number> => ({
    gasLoad: gasLoad * lpm,
    vacuumCapacity: 295 * lpm,
    vacuumReserve: (295 - counted) * lpm,
    openingsCarried: ((295 - counted) * lpm) / hose,
    openingsCarriedAll: ((590 - counted) * lpm) / hose,
  });
  const set = (plant: RuleBench, gasLoad: number, counted: number): RuleBench => {
    for (const [point, value] of Object.entries(points(gasLoad, counted))) plant.set(point, value);
    return plant;
  };
  const bench = (gasLoad = 3): RuleBench =>
    new RuleBench({ also: Object.keys(points(0, 0)), values: points(gasLoad, gasLoad) }).run(30);

  it('counts what is still carried with the whole hose, before its gas has reached the exhaust', () => {
    const cut = set(bench(), 80, 15).run(4);
    // (295 − 3 − 164) / 164 = 0.78, with both sources (590 − 3 − 164) / 164 = 2.6; what is counted so far would leave 1 and 3
    expect(cut.detail('AIR-1')).toMatch(/Carries this one and 0 more on one source, 2 with all sources\./);
    // A minute later all of it is there: a smaller opening than a hose, and (295 − 80) / 164 = 1.3
    expect(set(cut, 80, 80).run(62).detail('AIR-1')).toMatch(
      /Carries this one and 1 more on one source, 3 with all sources\./,
    );
  });

  it('takes the measured gas load where more comes in than one hose lets', () => {
    // (590 − 290) / 164 = 1.8
    expect(set(bench(), 290, 15).run(4).detail('AIR-1')).toMatch(
      /Carries this one and 0 more on one source, 1 with all/,
    );
  });

  it('says at once that one source will not carry a hose that is beyond its reserve', () => {
    expect(set(bench(150), 200, 155).run(4).detail('AIR-1')).toMatch(
      /One source does not carry this opening: start the second/,
    );
  });
});

describe('AIR-2', () => {
  const bench = (): RuleBench =>
    new RuleBench({ also: ['gasAllowance'], values: { gasLoad: 2 * lpm, gasAllowance: 2 * lpm } }).run(30);

  it('is raised half an hour after the gas load is above what is accounted for, and says by how much', () => {
    const leaking = bench().set('gasLoad', 12 * lpm);
    expect(leaking.run(29 * 60).active('AIR-2')).toBe(false);
    leaking.run(5 * 60);
    expect(leaking.alarm('AIR-2')).toMatchObject({ active: true, priority: 3 });
    expect(leaking.detail('AIR-2')).toBe('10 free L/min more than is accounted for.');
  });

  it('is not raised by what a permit or a fill accounts for', () => {
    const accounted = bench()
      .set('gasLoad', 12 * lpm)
      .set('gasAllowance', 12 * lpm);
    expect(accounted.run(3600).active('AIR-2')).toBe(false);
  });

  it('judges the mean of a source that starts and stops, not its bursts', () => {
    const cycling = bench();
    cycling.run(2400, (second) => void cycling.set('gasLoad', (second % 100 < 10 ? 30 : 0) * lpm));
    expect(cycling.active('AIR-2')).toBe(false);
    cycling.run(2400, (second) => void cycling.set('gasLoad', (second % 100 < 50 ? 30 : 0) * lpm));
    expect(cycling.active('AIR-2')).toBe(true);
  });

  it('is neither raised nor cleared by a gas load that is lost', () => {
    expect(bench().bad('gasLoad').run(3600).active('AIR-2')).toBe(false);
    const leaking = bench()
      .set('gasLoad', 12 * lpm)
      .run(2400);
    expect(leaking.bad('gasLoad').run(3600).active('AIR-2')).toBe(true);
    expect(
      leaking
        .set('gasLoad', 2 * lpm)
        .run(3600)
        .active('AIR-2'),
    ).toBe(false);
  });
});

describe('AIR-3', () => {
  const bench = (): RuleBench =>
    new RuleBench({
      also: ['openingsCarried', 'openingsCarriedAll', 'vacuumReserve', 'vacuum.sealWater.temperature'],
      values: { openingsCarried: 1.7, openingsCarriedAll: 3.5, vacuumReserve: 280 * lpm },
    }).run(30);

  it('is raised a minute after the reserve is below one hose, and clears above its deadband', () => {
    const weak = bench()
      .set('openingsCarried', 0.95)
      .set('vacuumReserve', 156 * lpm);
    expect(weak.secondsUntil('AIR-3', 90)).toBe(61);
    expect(weak.alarm('AIR-3')?.priority).toBe(3);
    expect(weak.detail('AIR-3')).toBe('One source has 156 free L/min left. With all sources 3 open hoses are carried.');
    expect(weak.set('openingsCarried', 1.05).run(300).active('AIR-3')).toBe(true);
    expect(weak.set('openingsCarried', 1.15).run(90).active('AIR-3')).toBe(false);
  });

  const withTrap = (): RuleBench =>
    new RuleBench({
      also: ['openingsCarried', 'openingsCarriedAll', 'vacuumReserve', 'gasLoad', 'vacuum.trap.full'],
      values: {
        openingsCarried: 1.7,
        openingsCarriedAll: 3.5,
        vacuumReserve: 280 * lpm,
        gasLoad: 4 * lpm,
        'vacuum.trap.full': 0,
      },
    }).run(90);

  it('counts a source with water in its trap as one that carries no hose, and looks for no leak', () => {
    const stuck = withTrap();
    expect(stuck.active('AIR-3')).toBe(false);
    expect(stuck.set('vacuum.trap.full', 1).secondsUntil('AIR-3', 90)).toBe(61);
    expect(stuck.alarm('AIR-3')).toMatchObject({ value: 0, limit: 1 });
    expect(stuck.detail('AIR-3')).toBe(
      'One source has 280 free L/min left by its curve; 4 free L/min come in. With water in its trap it carries less: counted as no open hose. Water stands in the trap of the vacuum source. Its capacity is down, not the loop untight: start the second source and look at the float of the trap.',
    );
    expect(stuck.bad('vacuum.trap.full').run(300).active('AIR-3')).toBe(true);
    expect(stuck.set('vacuum.trap.full', 0).run(90).active('AIR-3')).toBe(false);
  });

  it('is not raised at just one hose, and holds where the reserve is lost', () => {
    expect(bench().set('openingsCarried', 1).run(300).active('AIR-3')).toBe(false);
    const weak = bench().set('openingsCarried', 0.5).run(90);
    expect(weak.bad('openingsCarried').run(600).active('AIR-3')).toBe(true);
  });
});

describe('AIR-4', () => {
  const full = { 'vacuum.speed': 1, 'vacuum.running': 1, 'separator.pressure': 32_000 };
  const bench = (values: Record<string, number> = full): RuleBench => new RuleBench({ values }).run(30);
  const rise = (plant: RuleBench, seconds: number, paPerS: number): RuleBench => {
    const from = plant.pipeline.state.value[plant.pipeline.unitSlots[0]?.separatorPressure ?? -1] ?? Number.NaN;
    return plant.run(seconds, (second) => void plant.set('separator.pressure', from + paPerS * (second + 1)));
  };

  it('is raised within ten seconds where the pressure runs up with the source full', () => {
    const cut = rise(bench(), 10, 1000);
    expect(cut.alarm('AIR-4')).toMatchObject({ active: true, priority: 1 });
    expect(cut.detail('AIR-4')).toMatch(/^Separator at 42\.0 kPa and rising by .* all sources full\.$/);
  });

  it('is not raised by the slow rise of a weak source: 0.2 kPa a minute at 1 free L/min', () => {
    expect(rise(bench(), 300, 200 / 60).active('AIR-4')).toBe(false);
  });

  it('is not raised with speed left, nor with the source at rest', () => {
    expect(rise(bench({ ...full, 'vacuum.speed': 0.6 }), 10, 1000).active('AIR-4')).toBe(false);
    expect(rise(bench({ ...full, 'vacuum.running': 0 }), 10, 1000).active('AIR-4')).toBe(false);
  });

  it('stands at ambient, holds where the pressure is lost, and clears as the pressure is drawn down', () => {
    const cut = rise(bench(), 20, 2000);
    cut.run(60);
    expect(cut.active('AIR-4')).toBe(true);
    cut.bad('separator.pressure').run(60);
    expect(cut.active('AIR-4')).toBe(true);
    cut.set('separator.pressure', 72_000).run(15);
    expect(rise(cut, 30, -1000).active('AIR-4')).toBe(false);
  });
});

describe('BOIL-2', () => {
  it('is raised 3 s after the wall is crossed, and BOIL-1 folds under it', () => {
    const deep = new RuleBench({ values: { lowerWallMargin: 1000 } }).run(30);
    expect(deep.alarm('BOIL-1')?.foldedUnder).toBeNull();
    deep.set('lowerWallMargin', -100);
    expect(deep.secondsUntil('BOIL-2', 10)).toBe(4);
    expect(deep.alarm('BOIL-2')?.priority).toBe(1);
    expect(deep.alarm('BOIL-1')?.foldedUnder).toBe('m1:BOIL-2');
    expect(deep.set('lowerWallMargin', 400).run(60).active('BOIL-2')).toBe(true);
    expect(deep.bad('lowerWallMargin').run(60).active('BOIL-2')).toBe(true);
    expect(deep.set('lowerWallMargin', 600).run(20).active('BOIL-2')).toBe(false);
    expect(deep.alarm('BOIL-1')?.foldedUnder).toBeNull();
  });
});
