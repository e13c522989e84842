import type { UnitEntryId } from '../../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import type { CompiledUnit } from '../../../../../../backend/src/evaluation/site/compiled-site';
import { RuleBench } from '../../alarm-rules/rule-bench';

/** A unit in which the condition of an entry holds, and has been seen for its on-delay. */
export interface Raised {
  readonly make: () => RuleBench;
  /** How long a reading is bad, s, in steps of so many: beyond the off-delay, and beyond the mean that the rule looks at. */
  readonly badS: number;
  readonly stepS: number;
  /** Only these points are lost, where the condition does not last by itself, or the plant takes long to make; else each one. */
  readonly points?: readonly string[];
}

const lasting = (make: () => RuleBench, badS: number, stepS = 1, points?: readonly string[]): Raised => ({
  make,
  badS,
  stepS,
  ...(points === undefined ? {} : { points }),
});

const litresPerMin = 1 / 60_000;
const commands = { 'vacuum.command': 1, 'pump.command': 1, 'vacuum.standby.running': 0, 'pump.standby.running': 0 };
const commanded = (): RuleBench =>
  new RuleBench({ also: Object.keys(commands), values: { ...commands, chipPower: 240_000 } }).run(30);

const withIsolation = (unit: CompiledUnit, slotOf: (point: string) => number): CompiledUnit => ({
  ...unit,
  branches: unit.branches.map((branch) => ({
    ...branch,
    slot: { ...branch.slot, isolated: slotOf(`branch.${branch.id}.isolated`) },
  })),
});

const isolated = (): RuleBench =>
  new RuleBench({
    also: ['branch.r1.isolated', 'branch.r2.isolated'],
    unit: withIsolation,
    values: { 'branch.r1.isolated': 0, 'branch.r2.isolated': 1, 'branch.r2.power': 4000 },
  }).run(30);

const underPermit = (): RuleBench => {
  const bench = new RuleBench({ values: { gasLoad: 75 * litresPerMin } });
  const { openPermits } = bench.pipeline;
  openPermits.count[0] = 1;
  openPermits.expectedM3PerS[0] = 30 * litresPerMin;
  openPermits.dueMs[0] = bench.nowMs + 36_000_000;
  return bench.run(10);
};

const overrun = (): RuleBench => {
  const values = { 'separator.pressure': 32_000, 'vacuum.speed': 1, 'vacuum.running': 1 };
  const bench = new RuleBench({ values }).run(10);
  return bench.run(20, (second) => void bench.set('separator.pressure', 32_000 + 400 * second));
};

const tankFalls = (): RuleBench =>
  new RuleBench({
    values: { 'pump.speed': 1, 'pump.running': 1, timeToEmpty: 900 },
  }).run(30);

/** Half a day of a worse figure, and nearly as long of a better one: as old hours leave, the mean of what is left gets better. */
const twelveAndEleven = (bench: RuleBench, point: string, better: number): RuleBench =>
  bench.hours(13, 300).set(point, better).hours(11, 300);
const day = (make: () => RuleBench, ...points: readonly string[]): Raised => lasting(make, 36 * 3600, 300, points);

const pump = (): RuleBench => {
  const values = { pumpEfficiency: 0.3, 'transfer.flow': 0.005 };
  const design = { ratedFlowM3PerS: 0.005, commissioned: { pumpEfficiency: 0.5 } as never };
  return twelveAndEleven(new RuleBench({ also: ['transfer.flow'], values, design }), 'pumpEfficiency', 0.47);
};
const exchanger = (): RuleBench => {
  const values = { uaRatio: 0.6, 'valve.command': 0.5, heatRemoved: 150_000 };
  const design = { ratedHeatW: 200_000 };
  return twelveAndEleven(new RuleBench({ also: ['valve.command'], values, design }), 'uaRatio', 0.92);
};
const valve = (): RuleBench => {
  const values = { uaRatio: 1, 'valve.command': 1, heatRemoved: 150_000 };
  const design = { ratedHeatW: 200_000 };
  return twelveAndEleven(new RuleBench({ also: ['valve.command'], values, design }), 'valve.command', 0.86);
};

const following = (): RuleBench => {
  const bench = new RuleBench({ without: ['pump.inlet.pressure', 'return.pressure'], gauge: ['supply.pressure'] });
  return bench.run(
    7 * 3600,
    (second) => void bench.set('ambient.pressure', 101_300 - second / 15).set('supply.pressure', 84_000 - second / 15),
    60,
  );
};

const byDerived = (point: string, value: number, seconds: number): (() => RuleBench) => {
  return () => new RuleBench({ values: { [point]: value } }).run(seconds, undefined, 60);
};

const crossed = (): RuleBench =>
  new RuleBench({
    also: ['facility.return.temperature'],
    values: { 'loop.flow': 0.0058, 'facility.return.temperature': 47, 'return.temperature': 44 },
  })
    .contradicted('lmtd')
    .run(660, undefined, 60);

const setByHand = (): RuleBench =>
  new RuleBench({
    also: ['control.manual', 'supply.setPoint'],
    values: { 'control.manual': 0, 'supply.setPoint': 36.3 },
  })
    .run(30)
    .set('supply.setPoint', 38)
    .run(10);

const tanks = ['a', 'b'];
const alternating = (): RuleBench => {
  const bench = new RuleBench({
    tanks: tanks.map((id) => ({ id, areaM2: 0.2 })),
    also: tanks.map((id) => `tank.${id}.filling`),
    unit: (unit, slotOf) => ({
      ...unit,
      shape: 'b',
      tanks: unit.tanks.map((tank) => ({
        ...tank,
        slot: { ...tank.slot, filling: slotOf(`tank.${tank.id}.filling`) },
      })),
    }),
    values: { 'tank.a.filling': 1, 'tank.b.filling': 0, chipPower: 200_000, 'loop.flow': 0.002 },
  });
  for (let cycle = 0; cycle < 8; cycle += 1) {
    const [from, to] = cycle % 2 === 0 ? tanks : [...tanks].reverse();
    bench.run(40).set(`tank.${from}.filling`, 0).set(`tank.${to}.filling`, 1);
  }
  return bench.run(60);
};

/**
 * Entries that a limit alone does not bring into alarm in a plant at rest, each with a plant in which its condition holds. The
 * others are tried with their limit moved.
 */
export const raisedForReal: Readonly<Partial<Record<UnitEntryId, readonly Raised[]>>> = {
  'AIR-4': [lasting(overrun, 15)],
  'WATER-1': [
    lasting(byDerived('water.found', 1, 120), 10),
    lasting(() => new RuleBench({ also: ['tray.water.found'], values: { 'tray.water.found': 1 } }).run(5), 10),
  ],
  'PUMP-1': [lasting(() => commanded().set('pump.running', 0).run(5), 10)],
  'VSRC-1': [lasting(() => commanded().set('vacuum.running', 0).run(5), 10)],
  'PERMIT-1': [lasting(underPermit, 35)],
  'VSRC-2': [
    lasting(() => commanded().set('vacuum.standby.running', 1).run(10), 65),
    lasting(() => commanded().set('pump.standby.running', 1).run(10), 65),
  ],
  'TANK-1': [lasting(tankFalls, 65)],
  'ISOL-1': [lasting(isolated, 40)],
  'XFER-1': [lasting(alternating, 20, 1, ['tank.a.filling', 'tank.b.filling', 'loop.flow', 'chipPower'])],
  'PUMP-3': [day(pump, 'pumpEfficiency', 'transfer.flow')],
  'HX-1': [day(exchanger, 'uaRatio'), day(valve, 'valve.command', 'heatRemoved')],
  'INS-2': [
    lasting(following, 8 * 3600, 60, [
      'ambient.pressure',
      'supply.pressure',
      'supplyTank.pressure',
      'supplyTank.level',
    ]),
  ],
  'INS-4': [lasting(crossed, 3660, 60)],
  'CHANGE-1': [lasting(byDerived('inLeakShift', 1.4, 1500), 3660, 60)],
  'CHANGE-2': [lasting(byDerived('patternResidual', 1.4, 3000), 3660, 60)],
  // A change of a set point counts for an hour.
  'SET-1': [lasting(setByHand, 3000, 60)],
};
