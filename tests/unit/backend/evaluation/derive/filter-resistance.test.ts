import { describe, expect, it } from 'vitest';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import type { BuiltSite } from '../../../../helpers/compiled-site-builder';
import { buildRichUnitM } from '../../../../helpers/rich-unit-m';

/** A filter twice as tight as a clean one, and what the two pumps tell. */
function withPumps(told: Readonly<Record<string, number>>): BuiltSite {
  const built = buildRichUnitM({ also: Object.keys(told).filter((id) => id.includes('standby')) });
  built.set('filter.pressureDrop', 30_000);
  for (const [id, value] of Object.entries(told)) built.set(id, value);
  deriveHall(built.site, built.state, 0, 1000);
  deriveUnit(built.site, built.state, 0, 1000, false);
  return built;
}

describe('the resistance of the filter', () => {
  it('is watched whichever pump drives the water through it', () => {
    for (const told of [
      { 'pump.running': 1, 'pump.standby.running': 0 },
      { 'pump.running': 0, 'pump.standby.running': 1 },
    ])
      expect(withPumps(told).value('filterResistance')).toBeCloseTo(2, 1);
  });

  it('says nothing while both stand, and while one stands beside none', () => {
    for (const told of [{ 'pump.running': 0, 'pump.standby.running': 0 }, { 'pump.running': 0 }]) {
      const built = withPumps(told);
      expect(built.value('filterResistance')).toBeNaN();
      expect(built.reasons('filterResistance') & reasonBit.undefined).not.toBe(0);
    }
  });
});
