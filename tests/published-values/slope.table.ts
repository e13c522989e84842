import { theilSenSlope } from '@ebbline/shared/statistics/theil-sen';
import { deriveHall } from '../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../backend/src/evaluation/derive/derive-unit';
import { buildRichUnitM, runRichUnitM } from '../helpers/rich-unit-m';
import type { BuiltSite } from '../helpers/compiled-site-builder';
import { relative, type PublishedTable } from './published-table';

/** A change in a day of a figure that an input moves, at the end of so many hours in which the input goes evenly. */
function onSite(point: string, hours: number, move: (built: BuiltSite, day: number, nowMs: number) => void): number {
  const built = buildRichUnitM();
  for (let s = 0; s <= hours * 3600; s += 10) {
    runRichUnitM(built, s * 1000);
    move(built, s / 86_400, s * 1000);
    deriveHall(built.site, built.state, 0, s * 1000);
    deriveUnit(built.site, built.state, 0, s * 1000, false);
  }
  return built.value(point);
}

const slopeTable = (
  point: string,
  title: string,
  perDay: number,
  evaluate: () => number,
  tolerance = 0.01,
): PublishedTable => ({
  title,
  subject: { point },
  evaluate: (equation) => equation(1, 1 + perDay, 1 + 2 * perDay, 1 + 3 * perDay),
  onSite: { point, evaluate },
  rows: [
    {
      id: `an even change of ${perDay} a day`,
      status: 'computed',
      source: 'a straight line has one slope: of all pairs alike (Sen 1968), by hand',
      inputs: {},
      expected: perDay,
      tolerance: relative(tolerance),
    },
  ],
});

/** The barometer falls by 2 400 Pa in a day, and with it the margin. */
export const marginSlopeTable = slopeTable('marginTrend', 'vacuum margin, Pa in a day', -2_400, () =>
  onSite('marginTrend', 4, (built, day, nowMs) => {
    built.set('ambient.pressure', 101_300 - 2_400 * day, nowMs);
  }),
);

/** Pressure drop of 15 kPa is the clean filter's at the flow of unit M. */
export const filterSlopeTable = slopeTable('filterTrend', 'filter resistance, in a day', 0.4, () =>
  onSite('filterTrend', 12, (built, day, nowMs) => {
    built.set('filter.pressureDrop', 15_000 * (1 + 0.4 * day), nowMs);
  }),
);

/** More through the exhaust, the rest as it was: all of it is in-leak. */
export const inLeakSlopeTable = slopeTable('inLeakTrend', 'in-leak, free m³/s in a day', 2e-5, () =>
  onSite('inLeakTrend', 12, (built, day, nowMs) => {
    built.set('vacuum.exhaustFlow', 5e-5 + 2e-5 * day, nowMs);
  }),
);

/** Both plates: 300 W over 0.06 K/W at first, 0.0006 K/W more each day, which is a hundredth. */
export const plateSlopeTable = slopeTable('plateTrend', 'plate resistance, in a day', 0.01, () =>
  onSite('plateTrend', 60, (built, day, nowMs) => {
    for (const plate of ['p1', 'p2'])
      built.set(`plate.${plate}.temperature`, 36.3 + 300 * 0.06 * (1 + 0.01 * day), nowMs);
  }),
);

/** LMTD grows by a share each day while the heat stays: UA falls by it. */
export const uaSlopeTable = slopeTable('uaTrend', 'UA against clean, in a day', -0.01, () => uaOnSite());

function uaOnSite(): number {
  const probe = buildRichUnitM();
  const set = (built: BuiltSite, facilityC: number, nowMs: number): void => {
    built.set('facility.supply.temperature', facilityC, nowMs);
    built.set('facility.return.temperature', facilityC + 8.7, nowMs);
  };
  const ratioAt = (facilityC: number): number => {
    set(probe, facilityC, 0);
    deriveHall(probe.site, probe.state, 0, 0);
    deriveUnit(probe.site, probe.state, 0, 0, false);
    return probe.value('uaRatio');
  };
  const first = ratioAt(30);
  /** By halving: warmer facility water leaves less difference, so UA is more. */
  const facilityFor = (ratio: number): number => {
    let [from, to] = [25, 31];
    for (let i = 0; i < 40; i += 1) {
      const middle = (from + to) / 2;
      if (ratioAt(middle) < ratio) from = middle;
      else to = middle;
    }
    return (from + to) / 2;
  };
  // One temperature an hour: the steps are small against the six hours of a mean.
  const byHour = Array.from({ length: 61 }, (_, hour) => facilityFor(first - (0.01 * hour) / 24));
  return onSite('uaTrend', 60, (built, day, nowMs) => {
    set(built, byHour[Math.floor(day * 24)] ?? 30, nowMs);
  });
}

/** The function itself, with one wild point among them. */
export const wildPointTable: PublishedTable = {
  title: 'slope through points one apart, one of them wild',
  subject: { equation: theilSenSlope },
  evaluate: (equation) => equation(1, 2, 3, 40, 5, 6),
  rows: [
    {
      id: 'one wild point of six',
      status: 'computed',
      source: 'Theil–Sen by hand: ten of fifteen pair slopes are 1',
      inputs: {},
      expected: 1,
      tolerance: relative(1e-9),
    },
  ],
};
