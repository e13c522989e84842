import { airThroughOpening } from '@ebbline/shared/hydraulics/air-through-opening';
import { freeAirOfMass } from '@ebbline/shared/hydraulics/free-air';
import { celsius, pascalAbsolute } from '@ebbline/shared/units/quantity';
import { usable } from '../../../alarm-rules/judge-context';
import type { Gate } from '../guided-test';
import { ambientOf, chosen, uOf, valueOf, type GuidedView } from '../guided-view';
import { readingOf } from './exchange';

/** The source has to carry this many times what the opening lets in. Own rule. */
const reserveTimes = 1.5;
/** Load that counts as off, of rated heat. Own rule. */
const offShare = 0.02;
/** Room air, °C: its part in a gas flow is 0.2 % a kelvin. */
const roomC = 20;

/** Air that an opening of the chosen bore lets in, free m³/s: choked, the most there can be (NACA Report 1135). */
export function expectedAir(view: GuidedView): number {
  const areaM2 = (Math.PI / 4) * (chosen(view, 'bore') / 1000) ** 2;
  const ambient = ambientOf(view);
  const { openingDischargeCoefficient: coefficient } = view.plan.unit.design;
  return freeAirOfMass(
    airThroughOpening(coefficient, areaM2, pascalAbsolute(ambient), celsius(roomC), pascalAbsolute(0.3 * ambient)),
  );
}
export const litres = (m3PerS: number): string => (m3PerS * 60_000).toFixed(0);

/**
 * What has come in by the opening so far, free m³/s: it is part of the gas load already, and off the reserve. Only what came since the
 * loop was measured as it is, and no more than the bore lets in: a leak that was there before is none of it.
 */
function cameIn(view: GuidedView): number {
  const before = readingOf(view.steps, 'before', 'gasLoad');
  if (before === undefined) return 0;
  return Math.min(expectedAir(view), Math.max(0, valueOf(view, 'gasLoad') - before.mean));
}

export const reserve: Gate = {
  code: 'GUIDED_RESERVE',
  shut(view) {
    const [left, u] = [valueOf(view, 'vacuumReserve'), uOf(view, 'vacuumReserve')];
    if (Number.isNaN(left) || Number.isNaN(u)) return 'the vacuum reserve, or its uncertainty, is not known';
    const bore = chosen(view, 'bore');
    const wanted = reserveTimes * expectedAir(view) - cameIn(view);
    if (left - 2 * u >= wanted) return null;
    return `vacuum reserve ${litres(left)} ± ${litres(2 * u)} free L/min; a bore of ${bore} mm asks for ${litres(wanted)} with room above it`;
  },
};
export const loadOff: Gate = {
  code: 'GUIDED_LOAD',
  shut(view) {
    const { ratedHeatW, plateLimitC, fanPath } = view.plan.unit.design;
    const power = valueOf(view, 'chipPower');
    if (power <= offShare * (ratedHeatW ?? 0)) return null;
    const onFans = valueOf(view, 'temperatureOnFans') + 2 * uOf(view, 'temperatureOnFans');
    if (fanPath !== null && plateLimitC !== null && onFans < plateLimitC) return null;
    return 'the load is not off, and it is not proved that fans alone keep the chips below their limit';
  },
};
export const trays = ['water.found', 'tray.water.found'] as const;
export const tray: Gate = {
  code: 'GUIDED_TRAY',
  shut: (view) =>
    trays.every((point) => valueOf(view, point) === 0)
      ? null
      : 'a leak rope and a drip tray that tell of water, both dry and heard of, have to lie under the place',
};
export const inTheLoop: Gate = {
  code: 'GUIDED_INPUT_BAD',
  shut({ pipeline, plan, settings }) {
    const branch = plan.unit.branches.find(({ id }) => id === settings['branch']);
    return usable(pipeline.state, branch?.slot.isolated ?? -1) >= 0.5
      ? 'the branch is valved off: no suction reaches it, and the margin of the loop does not hold there'
      : null;
  },
};
export const permit: Gate = {
  code: 'GUIDED_PERMIT',
  shut({ pipeline, plan, settings }) {
    const open = [...pipeline.permits.values()].some(
      ({ unit, branch, closedMs, untilMs }) =>
        unit === plan.unit.id &&
        // Before a branch is chosen, whether there is one that could be.
        (settings['branch'] === undefined ? branch !== null : branch === settings['branch']) &&
        closedMs === null &&
        !(untilMs < (pipeline.steppedMs[plan.unitIndex] ?? Infinity)),
    );
    return open
      ? null
      : 'no permit is open in Ebbline for the branch, or its time is over; open one for a single branch on the unit’s own screen';
  },
};
