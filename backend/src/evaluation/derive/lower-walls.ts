import { saturationPressure, saturationPressureSlope } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { boilingMargin } from '@ebbline/shared/hydraulics/pressure-margins';
import { npshAvailable, npshMargin } from '@ebbline/shared/hydraulics/npsh';
import { staticHead } from '@ebbline/shared/hydraulics/static-head';
import { combine2, combine3 } from '@ebbline/shared/uncertainty/combine';
import {
  celsius,
  metre,
  pascalAbsolute,
  pascalDifference,
  type Celsius,
  type Metre,
} from '@ebbline/shared/units/quantity';
import type { WettedNode } from '../site/compiled-site';
import { badBits, reasonBit } from '../slots/quality-reasons';
import {
  absolutePressureUncertainty,
  anchorSlot,
  elevationUncertainty,
  lossNow,
  lossUncertainty,
  nodePressure,
  returnPressureAt,
} from './node-pressure';
import { standardUncertainty } from './standard-uncertainty';
import type { UnitFrame } from './unit-frame';
import type { PlateWall } from './unit-plan';

/** A wall below the loop's pressures: how far it is, how sure, and where. Written in place. */
export interface Wall {
  margin: number;
  u: number;
  place: number;
}

/** Boiling at a wetted node, with the temperature of its main. Nearest node; NaN where one can't be known. */
export function nodeWall(frame: UnitFrame, into: Wall): void {
  let nearest = pascalDifference(Infinity);
  let binding: WettedNode | undefined;
  for (const node of frame.plan.unit.nodes) {
    const margin = boilingMargin(nodePressure(frame, node, !frame.stopped), mainTemperature(frame, node));
    if (margin < nearest || Number.isNaN(margin)) {
      nearest = margin;
      binding = node;
      if (Number.isNaN(margin)) break;
    }
  }
  into.margin = binding === undefined ? Number.NaN : nearest;
  into.place = binding?.place ?? -1;
  into.u =
    binding === undefined
      ? Number.NaN
      : combine2(
          combine3(
            absolutePressureUncertainty(frame, anchorSlot(frame, binding)),
            elevationUncertainty(frame, binding.main),
            lossUncertainty(frame, binding.lossAtRatedFlowPa, !frame.stopped),
          ),
          vapourUncertainty(frame, mainTemperature(frame, binding), binding.main),
        );
}

/**
 * Whether the pump's inlet is judged: a limit, an elevation, and a pressure at the inlet or in the separator. A pump that
 * stands cannot cavitate: NPSH required is a demand of its running impeller (ISO 9906:2012).
 */
export function hasPumpInletWall(frame: UnitFrame): boolean {
  const { design } = frame.plan.unit;
  if (frame.stopped || design.npshLimitM === null) return false;
  return (
    frame.plan.slot['pump.inlet.pressure'] >= 0 ||
    (frame.plan.slot['separator.pressure'] >= 0 && columnOverPump(frame) !== null)
  );
}

/** NPSH available against its limit, as pressure, while the pump runs. Takes its inputs through the tally. */
export function pumpInletWall(frame: UnitFrame, into: Wall): void {
  const available = pumpInletNpsh(frame, into);
  into.margin = npshMargin(available, metre(frame.plan.unit.design.npshLimitM ?? Number.NaN), frame.returnDensity);
  into.place = frame.plan.unit.pumpInletPlace;
}

/**
 * NPSH available, m, with its standard uncertainty as pressure in `into.u`. Takes its inputs through the tally. Velocity head
 * (below 0.1 m) is left out, which is on the safe side.
 */
export function pumpInletNpsh(frame: UnitFrame, into: Wall): Metre {
  const { plan, tally, state } = frame;
  const { design } = plan.unit;
  const inletSlot = plan.slot['pump.inlet.pressure'];
  const measured = inletSlot >= 0;
  const slot = measured ? inletSlot : plan.slot['separator.pressure'];
  const read = tally.take(state, slot);
  tally.take(state, plan.slot['return.temperature']);
  const flowing = !frame.stopped;
  const lossRated = measured ? 0 : design.pumpSuctionLossPa;
  if (flowing && lossRated !== 0) tally.take(state, plan.slot['loop.flow']);
  const column = measured ? 0 : staticHead(frame.returnDensity, metre(columnOverPump(frame) ?? Number.NaN));
  const inlet = pascalAbsolute(read + column - lossNow(frame, lossRated, flowing));
  into.u = combine2(
    combine3(
      absolutePressureUncertainty(frame, slot),
      measured ? 0 : elevationUncertainty(frame, 'return'),
      lossUncertainty(frame, lossRated, flowing),
    ),
    vapourUncertainty(frame, frame.returnTemperature, 'return'),
  );
  return npshAvailable(inlet, saturationPressure(frame.returnTemperature), frame.returnDensity);
}

/**
 * Boiling at the hottest plate's wall: t_wall = t_supply + R P, at the return main's pressure at the plate's
 * elevation. Plates whose power is bad are left out and make the result uncertain: the others are still a bound.
 */
export function plateWall(frame: UnitFrame, into: Wall): void {
  const { plan, tally, state, site } = frame;
  const resistance = plan.unit.design.plateWallResistanceKPerW ?? Number.NaN;
  into.margin = Infinity;
  into.u = Number.NaN;
  into.place = -1;
  let binding: PlateWall | undefined;
  for (const wall of plan.plateWalls) {
    const powerSlot = wall.plate.slot.power;
    if (((state.reasons[powerSlot] ?? 0) & badBits) !== 0) {
      tally.note(reasonBit.inputUncertain, Infinity);
      continue;
    }
    const temperature = celsius(frame.supplyTemperature + resistance * tally.take(state, powerSlot));
    const margin = boilingMargin(
      returnPressureAt(frame, wall.elevationM, wall.returnLossPa, !frame.stopped),
      temperature,
    );
    if (margin < into.margin) {
      into.margin = margin;
      binding = wall;
    }
  }
  if (binding === undefined) return;
  const powerSlot = binding.plate.slot.power;
  const temperature = celsius(frame.supplyTemperature + resistance * (state.value[powerSlot] ?? Number.NaN));
  const temperatureU = combine2(
    standardUncertainty(site.slots, state, plan.slot['supply.temperature']),
    resistance * standardUncertainty(site.slots, state, powerSlot),
  );
  into.place = binding.plate.place;
  into.u = combine2(
    combine3(
      absolutePressureUncertainty(frame, plan.returnAnchor?.slot ?? -1),
      elevationUncertainty(frame, 'return'),
      lossUncertainty(frame, binding.returnLossPa, !frame.stopped),
    ),
    saturationPressureSlope(temperature) * temperatureU,
  );
}

const mainTemperature = (frame: UnitFrame, node: WettedNode): Celsius =>
  node.main === 'supply' ? frame.supplyTemperature : frame.returnTemperature;

function columnOverPump(frame: UnitFrame): number | null {
  const { separatorSurfaceM, pumpInletM } = frame.plan.unit.design;
  return separatorSurfaceM === null || pumpInletM === null ? null : separatorSurfaceM - pumpInletM;
}

function vapourUncertainty(frame: UnitFrame, temperature: Celsius, main: WettedNode['main']): number {
  const slot = frame.plan.slot[main === 'supply' ? 'supply.temperature' : 'return.temperature'];
  return saturationPressureSlope(temperature) * standardUncertainty(frame.site.slots, frame.state, slot);
}
