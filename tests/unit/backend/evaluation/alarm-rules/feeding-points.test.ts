import { describe, expect, it } from 'vitest';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { catalogue, unitEntries } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import type { UnitEntryId } from '../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import { feedingPoints } from '../../../../../backend/src/evaluation/alarm-rules/feeding-points';
import { highestPriorityOf } from '../../../../../backend/src/evaluation/alarm-rules/priority-of-entry';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { pointPattern } from '@ebbline/shared/contract/point-table';
import { buildSite, runUnitM } from '../../../../helpers/compiled-site-builder';

const feedsOf = (id: UnitEntryId): readonly string[] => unitEntries.find((entry) => entry.id === id)?.feeds ?? [];

describe('the points that an entry needs', () => {
  const judged: readonly (readonly [UnitEntryId, string])[] = [
    ['MARGIN-1', 'vacuumMarginWorst'],
    ['MARGIN-2', 'vacuumMargin'],
    ['BOIL-1', 'lowerWallMargin'],
    ['DEW-1', 'dewPointMargin'],
  ];

  it.each(judged)('of %s hold every measured point without which %s has no value', (id, derived) => {
    const whole = buildSite();
    const measured = whole.site.slots.pointId.filter((_, slot) => whole.site.slots.measured[slot] === 1);
    const blinding = measured.filter((point) => {
      const built = buildSite();
      runUnitM(built);
      built.mark(point, reasonBit.stale);
      deriveHall(built.site, built.state, 0, 0);
      deriveUnit(built.site, built.state, 0, 0, false);
      return Number.isNaN(built.value(derived));
    });
    expect(blinding.length).toBeGreaterThan(2);
    expect(feedsOf(id)).toEqual(expect.arrayContaining(blinding.map(pointPattern)));
  });

  it('of MARGIN-2 hold those of its signs, without which it is never priority 1', () => {
    expect(feedsOf('MARGIN-2')).toEqual(expect.arrayContaining([...feedsOf('WATER-1'), ...feedsOf('AIR-1')]));
  });
});

describe('a point whose loss is an alarm', () => {
  it('feeds an entry that may be priority 1: FLOW-2, WATER-1, or MARGIN-2 with water or air', () => {
    const first = unitEntries.filter((entry) => highestPriorityOf(entry) === 1).map(({ id }) => id);
    expect(first.sort()).toEqual(['FLOW-2', 'MARGIN-2', 'WATER-1']);
    const { site } = buildSite();
    const points = feedingPoints(site);
    for (const { feeds, priority } of points) {
      expect(feeds.some((id) => first.includes(id))).toBe(true);
      expect(priority).toBe(3);
    }
    const ids = points.map(({ slot }) => site.slots.pointId[slot]);
    expect(ids).toEqual(expect.arrayContaining(['loop.flow', 'water.found', 'ambient.pressure', 'separator.level']));
    // These feed DEW-1 alone (major, 15 min): priority 3.
    for (const id of ['hall.humidity', 'hall.temperature', 'facility.supply.temperature'])
      expect(ids).not.toContain(id);
    expect(catalogue['DEW-1'].severity).toBe('major');
  });
});
