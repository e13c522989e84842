import { geopotentialAltitude, standardPressure } from '@ebbline/shared/fluid-properties/standard-atmosphere';
import { metre } from '@ebbline/shared/units/quantity';
import { judgeAbove } from '../above';
import { anyOf } from '../any-of';
import { everyShape, type GroupEntry } from '../entry';
import type { GroupContext } from '../group-context';
import { usable } from '../judge-context';
import { Verdict } from '../verdict';

/** Weather stays within so much of the standard atmosphere at the site’s altitude; a real deep low is −5 kPa: Pa. */
const fromAltitudePa = 6000;
const fromAltitudeDeadbandPa = 500;

/**
 * A hall’s barometer differs from those of the neighbouring halls by more than `limit`, Pa, or from the altitude by more than weather
 * does. Weather moves all halls alike: a deep low of −3 kPa in a day is none.
 */
export const amb1: GroupEntry = {
  id: 'AMB-1',
  per: 'hall',
  title: 'Barometer of the hall is not to be trusted',
  cause:
    'Sensor drifting or failed, its port blocked, its altitude setting changed, or a hall whose air is held at a pressure of its own.',
  consequence: 'Vacuum margins of all units in the hall are wrong by as much.',
  action: everyShape(
    'Use the barometer of a neighbouring hall for the margins by site procedure, and have this one compared with a reference.',
  ),
  confirm: 'Compare with a hand barometer beside it, or with the nearest weather station at the site’s altitude.',
  timeToRespondS: 86_400,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: 300, deadband: 50, onDelayMs: 600_000, offDelayMs: 600_000 },
  unitOfMeasure: 'Pa',
  basis:
    'Barometers are good to ±0.1 kPa (common practice). Standard atmosphere: ISO 2533. Measured weather falls by 3.0 kPa in 24 h at most.',
  feeds: ['ambient.pressure'],
  judge(context, limits, active, finding) {
    const pressure = pressureOf(context, context.group);
    const others = neighbours(context);
    const standard = standardPressure(geopotentialAltitude(metre(context.site.altitudeM)));
    const apart = others.length === 0 ? Number.NaN : Math.abs(pressure - median(others));
    // Neighbours that are all bad say nothing: neither that it differs nor that it agrees again.
    const isAlone = context.site.halls.length === 1;
    const byNeighbours = isAlone ? Verdict.no : judgeAbove(apart, limits.limit, limits.deadband, active);
    const byAltitude = judgeAbove(Math.abs(pressure - standard), fromAltitudePa, fromAltitudeDeadbandPa, active);
    finding.verdict = anyOf(byNeighbours, byAltitude);
    const altitudeOnly = byAltitude === Verdict.yes && byNeighbours !== Verdict.yes;
    finding.value = altitudeOnly ? pressure - standard : apart;
    finding.limit = altitudeOnly ? fromAltitudePa : limits.limit;
  },
  detail(context) {
    const others = neighbours(context);
    const kPa = (pascals: number): string => `${(pascals / 1000).toFixed(2)} kPa`;
    const pressure = pressureOf(context, context.group);
    if (Number.isNaN(pressure)) return null;
    const standard = standardPressure(geopotentialAltitude(metre(context.site.altitudeM)));
    if (others.length === 0) return `Reads ${kPa(pressure)}; the altitude gives ${kPa(standard)} ± weather.`;
    const which = others.length === 1 ? ' With two barometers it is not known which of them is off.' : '';
    return `Reads ${kPa(pressure)}, the other halls ${kPa(median(others))}.${which}`;
  },
};

const pressureOf = ({ site, state }: GroupContext, hall: number): number =>
  usable(state, site.halls[hall]?.slot.ambientPressure ?? -1);

/** Barometers of the other halls that may be used. */
function neighbours(context: GroupContext): readonly number[] {
  const pressures: number[] = [];
  for (let hall = 0; hall < context.site.halls.length; hall += 1) {
    if (hall === context.group) continue;
    const pressure = pressureOf(context, hall);
    if (!Number.isNaN(pressure)) pressures.push(pressure);
  }
  return pressures;
}

/** So that one barometer that is off does not make the others look wrong. */
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] as number;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] as number) + upper) / 2;
}
