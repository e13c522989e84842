import { describe, expect, it } from 'vitest';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { unitEntries } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import type { UnitEntryId } from '../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import { feedingPoints } from '../../../../../backend/src/evaluation/alarm-rules/feeding-points';
import { highestPriorityOf } from '../../../../../backend/src/evaluation/alarm-rules/priority-of-entry';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { pointPattern } from '@ebbline/shared/contract/point-table';
import { buildSite, runUnitM } from '../../../../helpers/compiled-site-builder';

/** Humidity tells of dew only: its entries are priority 2 at most. */
const hallAir = ['hall.humidity', 'hall.temperature'];

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
  const first = unitEntries.filter((entry) => highestPriorityOf(entry) === 1).map(({ id }) => id);
  const { site } = buildSite();
  const points = feedingPoints(site);
  const idsOf = (chosen: typeof points): (string | undefined)[] => chosen.map(({ slot }) => site.slots.pointId[slot]);

  it('feeds an entry that may be priority 1, such as FLOW-2, WATER-1, or MARGIN-2 with water or air', () => {
    expect(first).toEqual(expect.arrayContaining(['FLOW-2', 'MARGIN-2', 'WATER-1']));
    const alarmed = points.filter(({ priority }) => priority !== null);
    for (const { feeds, priority } of alarmed) {
      expect(feeds.some((id) => (first as readonly string[]).includes(id))).toBe(true);
      expect(priority).toBe(3);
    }
    expect(idsOf(alarmed)).toEqual(
      expect.arrayContaining(['loop.flow', 'water.found', 'ambient.pressure', 'separator.level']),
    );
  });

  it('else its loss is told as an alert', () => {
    const told = points.filter(({ priority }) => priority === null);
    for (const { feeds } of told) {
      expect(feeds.length).toBeGreaterThan(0);
      expect(feeds.some((id) => (first as readonly string[]).includes(id))).toBe(false);
    }
    // These feed no entry that may be priority 1.
    expect(idsOf(told)).toEqual(expect.arrayContaining(hallAir));
  });
});
