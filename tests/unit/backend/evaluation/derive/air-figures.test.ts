import { describe, expect, it } from 'vitest';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { explainPoint } from '../../../../../backend/src/evaluation/derive/explain-point';
import { varianceOf } from '../../../../../backend/src/evaluation/derive/uncertainty-budget';
import { designNotStated } from '../../../../../backend/src/evaluation/site/design-not-stated';
import { gasMethodNames } from '../../../../../backend/src/evaluation/site/unit-parts';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import type { BuiltSite, SiteOptions } from '../../../../helpers/compiled-site-builder';
import { buildRichUnitM, runRichUnitM } from '../../../../helpers/rich-unit-m';
import { plantSite, Plant } from '../pipeline/plant';

const litrePerMin = 1 / 60_000;
const [byPause, byMeter, byCurve] = gasMethodNames;

function run(values: Readonly<Record<string, number>>, change: SiteOptions = {}): BuiltSite {
  const built = buildRichUnitM(change);
  runRichUnitM(built);
  for (const [id, value] of Object.entries(values)) built.set(id, value);
  deriveHall(built.site, built.state, 0, 0);
  deriveUnit(built.site, built.state, 0, 0, false);
  return built;
}

/** Without the gas room: what is removed is what comes. */
const noRoom: SiteOptions = {
  design: { volumes: designNotStated.volumes, commissioned: { ...designNotStated.commissioned, gasLoadM3PerS: 0 } },
};

describe('the hole of an in-leak', () => {
  it('is larger on the supply side, where less pressure draws the air', () => {
    const built = run({ 'vacuum.exhaustFlow': 5 * litrePerMin }, noRoom);
    expect(built.value('equivalentHoleSupply')).toBeGreaterThan(1.05 * built.value('equivalentHole'));
  });

  it('does not follow the separator’s pressure while it is choked, and does above', () => {
    const hole = (separatorPa: number): number =>
      run({ 'vacuum.exhaustFlow': 5 * litrePerMin, 'separator.pressure': separatorPa }, noRoom).value('equivalentHole');
    expect(hole(25_000)).toBeCloseTo(hole(50_000), 12);
    expect(hole(80_000)).toBeGreaterThan(1.05 * hole(50_000));
  });

  it('is undefined where the in-leak is not above its uncertainty, and where there is none', () => {
    const wide: SiteOptions = { ...noRoom, accuracy: { 'vacuum.exhaustFlow': [3 * litrePerMin, Number.NaN] } };
    const lost = run({ 'vacuum.exhaustFlow': 2 * litrePerMin }, wide);
    for (const point of ['equivalentHole', 'equivalentHoleSupply']) {
      expect(lost.reasons(point) & reasonBit.undefined, point).not.toBe(0);
      expect(lost.value(point), point).toBeNaN();
    }
    expect(run({ 'vacuum.exhaustFlow': 9 * litrePerMin }, wide).reasons('equivalentHole')).toBe(0);
    expect(run({ 'vacuum.exhaustFlow': 0 }, noRoom).value('equivalentHole')).toBeNaN();
  });

  it('is as uncertain as half of what moves its area, and says of what', () => {
    const built = run({ 'vacuum.exhaustFlow': 5 * litrePerMin }, noRoom);
    const value = built.value('equivalentHole');
    const inLeak = built.expandedUncertainty('inLeak') / built.value('inLeak') / 2;
    const byHand = (value / 2) * Math.hypot(inLeak, 0.15 / Math.sqrt(3));
    expect(built.expandedUncertainty('equivalentHole')).toBeCloseTo(2 * byHand, 8);
    const { parts } = explainPoint(built.site, built.state, 0, built.slot('equivalentHole'), false);
    expect(parts.map(({ from }) => from)).toEqual(['inLeak', 'openingDischargeCoefficient', 'separator.pressure']);
    expect(2 * Math.sqrt(varianceOf(parts))).toBeCloseTo(built.expandedUncertainty('equivalentHole'), 12);
  });
});

describe('what a source carries', () => {
  it('is nothing on one source whose trap is full, and one source less on all', () => {
    const trap = { also: ['vacuum.trap.full'] };
    const dry = run({ 'vacuum.trap.full': 0 }, trap);
    const full = run({ 'vacuum.trap.full': 1 }, trap);
    expect(dry.value('openingsCarried')).toBeGreaterThan(1);
    expect(full.value('openingsCarried')).toBe(0);
    expect(full.value('largestOpeningCarried')).toBe(0);
    expect(full.value('openingsCarriedAll')).toBeCloseTo(dry.value('openingsCarried'), 9);
    expect(full.value('vacuumReserve')).toBe(dry.value('vacuumReserve'));
  });

  it('is nothing at all where the standby is not there either', () => {
    const built = run({ 'vacuum.trap.full': 1, 'vacuum.available': 0 }, { also: ['vacuum.trap.full'] });
    expect(built.value('openingsCarriedAll')).toBe(0);
  });

  it('counts a standby that runs, though the contact that said it was ready has dropped', () => {
    const reserve = (available: number, running: number): number =>
      run(
        { 'vacuum.available': available, 'vacuum.standby.running': running },
        { also: ['vacuum.standby.running'] },
      ).value('vacuumReserveAll');
    expect(reserve(0, 1)).toBe(reserve(1, 0));
    expect(reserve(0, 0)).toBeLessThan(reserve(0, 1));
  });

  it('is what the source’s curve says where the switch of the trap is lost', () => {
    const built = buildRichUnitM({ also: ['vacuum.trap.full'] });
    runRichUnitM(built);
    built.mark('vacuum.trap.full', reasonBit.stale);
    deriveHall(built.site, built.state, 0, 0);
    deriveUnit(built.site, built.state, 0, 0, false);
    expect(built.value('openingsCarried')).toBeGreaterThan(1);
  });
});

/** A separator into which 5 free L/min leak: its source rests for 100 s, then takes 60 for 9 s. */
function cycles(site = startStop()): Plant {
  const plant = new Plant(site);
  const perSecondKpa = (free: number): number => (free * litrePerMin * 101.325 * (318.15 / 293.15)) / 0.51;
  return plant.run(400, (second) => {
    const works = second % 109 >= 100;
    plant.m1.pSeparator += perSecondKpa(works ? 5 - 60 : 5);
    plant.m1.vacuumRunning = works;
  });
}
const startStop = (points: object = {}) =>
  plantSite({
    unit: {
      vacuumSource: {
        control: 'startStop',
        curve: [
          { pressure: '5 kPa', suction: '3 m3/h' },
          { pressure: '101 kPa', suction: '6 m3/h' },
        ],
      },
      volumes: { water: '488 L', separatorGas: '510 L' },
      commissioning: { by: 'team', on: '2025-11-18', gasLoad: '0.5 free L/min' },
    },
    points,
  });
const whereOf = ({ pipeline: { site, state } }: Plant, point: string): string | undefined => {
  const holder = site.holders[site.units[0]?.holder ?? -1];
  return holder?.places[state.where[holder.slotOf.get(point) ?? -1] ?? -1];
};

describe('a gas load says how it was found', () => {
  it('by what its pauses show, of a source that starts and stops', () => {
    const plant = cycles();
    expect(whereOf(plant, 'gasLoad')).toBe(byPause);
    expect(whereOf(plant, 'inLeak')).toBe(byPause);
    const { site, state } = plant.pipeline;
    const slot = site.holders[site.units[0]?.holder ?? -1]?.slotOf.get('gasLoad') ?? -1;
    expect(Math.abs((state.value[slot] ?? 0) / litrePerMin - 5)).toBeLessThan(0.5);
  });

  it('by its exhaust meter where it has one, and else by the curve of its source', () => {
    const meter = { 'vacuum.exhaustFlow': { path: 'exhaust', unit: 'free L/min', accuracy: '3 % of reading' } };
    const metered = new Plant(plantSite({ points: meter }));
    Object.assign(metered.m1, { exhaust: 2 });
    expect(whereOf(metered.run(5), 'gasLoad')).toBe(byMeter);
    expect(whereOf(new Plant(plantSite()).run(5), 'gasLoad')).toBe(byCurve);
  });
});
