import { limitLineSchema } from '@ebbline/shared/contract/setup';
import { pointDefinition } from '@ebbline/shared/contract/point-table';
import { describe, expect, it } from 'vitest';
import { limitLines } from '../../../../../backend/src/evaluation/alarm-rules/limit-lines/limit-lines';
import { designNotStated } from '../../../../../backend/src/evaluation/site/design-not-stated';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { buildSite, type BuiltSite, type SiteOptions } from '../../../../helpers/compiled-site-builder';

const allLines = ({ site, state }: BuiltSite, unitIndex = 0) => limitLines(site, state, unitIndex);
const linesOf = (options: SiteOptions, point: string) =>
  allLines(buildSite(options))
    .filter((line) => line.point === point)
    .map(({ entry, side, limit }) => ({ entry, side, limit }));

describe('the limits that are drawn beside the points of a unit', () => {
  it('stand where the alarm is raised, in the unit of measure of the point', () => {
    const lines = allLines(buildSite());
    for (const line of lines) {
      expect(limitLineSchema.safeParse(line).success).toBe(true);
      expect(line.unit_of_measure).toBe(pointDefinition(line.point)?.unit);
    }
    expect(lines).toContainEqual({
      entry: 'MARGIN-1',
      title: 'Vacuum margin small',
      point: 'vacuumMarginWorst',
      side: 'below',
      limit: 5000,
      unit_of_measure: 'Pa',
    });
  });

  it('follow the set point and the rated flow of the unit', () => {
    expect(linesOf({}, 'supply.temperature')).toEqual([{ entry: 'TSUP-1', side: 'above', limit: 38.3 }]);
    expect(linesOf({ design: { supplyClassLimitC: 45 } }, 'supply.temperature')).toEqual([
      { entry: 'TSUP-2', side: 'above', limit: 45 },
      { entry: 'TSUP-1', side: 'above', limit: 38.3 },
    ]);
    expect(linesOf({}, 'loop.flow')).toContainEqual({ entry: 'FLOW-2', side: 'below', limit: (0.5 * 346) / 60_000 });
  });

  it('follow the set point that the unit tells, and the site file while it is not known', () => {
    const built = buildSite({ also: ['supply.setPoint'] });
    const supplyLimit = () => allLines(built).find(({ entry }) => entry === 'TSUP-1')?.limit;
    built.set('supply.setPoint', 30);
    expect(supplyLimit()).toBe(32);
    built.mark('supply.setPoint', reasonBit.stale);
    expect(supplyLimit()).toBe(38.3);
  });

  it('follow the site file, and leave out an entry that it takes out', () => {
    const limits = new Map([
      ['MARGIN-1', { limit: 7000 }],
      ['DEW-1', { enabled: false }],
    ]);
    expect(linesOf({ limits }, 'vacuumMarginWorst')).toEqual([{ entry: 'MARGIN-1', side: 'below', limit: 7000 }]);
    expect(linesOf({ limits }, 'dewPointMargin').map(({ entry }) => entry)).toEqual(['DEW-2']);
  });

  it('are two for a band, and none for a side that has no limit', () => {
    const also = ['water.ph', 'water.bacteria'];
    expect(linesOf({ also }, 'water.ph')).toEqual([
      { entry: 'CHEM-2', side: 'below', limit: 8 },
      { entry: 'CHEM-2', side: 'above', limit: 9.5 },
    ]);
    expect(linesOf({ also }, 'water.bacteria')).toEqual([{ entry: 'CHEM-3', side: 'above', limit: 100 }]);
  });

  it('are one for each plate, and none where the unit states no figure or does not exist', () => {
    const plates = [{ id: 'p1', branch: 0, elevationM: null }];
    const also = ['plate.p1.resistanceRatio', 'facility.supply.temperature'];
    expect(linesOf({ plates, also }, 'plate.p1.resistanceRatio')[0]).toEqual({
      entry: 'RTH-1',
      side: 'above',
      limit: 1.25,
    });
    expect(designNotStated.facilityDesignSupplyC).toBeNull();
    expect(linesOf({ also }, 'facility.supply.temperature')).toEqual([]);
    expect(allLines(buildSite(), 9)).toEqual([]);
  });
});
