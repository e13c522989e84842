import { boilingMargin } from '@ebbline/shared/hydraulics/pressure-margins';
import { npshAvailable, npshMargin } from '@ebbline/shared/hydraulics/npsh';
import { staticHead } from '@ebbline/shared/hydraulics/static-head';
import { combine2, combine3 } from '@ebbline/shared/uncertainty/combine';
import { celsius, metre, pascalAbsolute, type Celsius, type Metre } from '@ebbline/shared/units/quantity';
import { badBits, reasonBit } from '../slots/quality-reasons';
import {
  absolutePressureUncertainty,
  lossNow,
  lossUncertainty,
  nodeUncertainty,
  returnPressureAt,
} from './node-pressure';
import { standardUncertainty } from './standard-uncertainty';
import { part } from './uncertainty-budget';
import type { UnitFrame } from './unit-frame';
import type { PlateWall } from './unit-plan';

/** A wall below the loop's pressures: how far it is, how sure, and where. Written in place. */
export interface Wall {
  margin: number;
  u: number;
  place: number;
}

/**
 * Boiling at a wetted node of the loop, by the hottest water known there. Nearest node; NaN where one can't be known. Worked out
 * once a second for all who ask, but where the parts of its uncertainty are to be written down.
 */
export function nodeWall(frame: UnitFrame, into: Wall): void {
  const { nodeWall: found } = frame;
  if (!frame.nodeWallKnown || frame.budget !== null) findNodeWall(frame, found);
  frame.nodeWallKnown = true;
  into.margin = found.margin;
  into.u = found.u;
  into.place = found.place;
}

function findNodeWall(frame: UnitFrame, into: Wall): void {
  const { nodes, plan } = frame;
  let nearest = Infinity;
  let binding = -1;
  for (let i = 0; i < plan.nodes.count; i += 1) {
    if (nodes.inLoop[i] === 0) continue;
    const margin = (nodes.now[i] as number) - (nodes.vapour[i] as number);
    if (!(margin >= nearest)) {
      nearest = margin;
      binding = i;
      if (Number.isNaN(margin)) break;
    }
  }
  const node = plan.unit.nodes[binding];
  into.margin = node === undefined ? Number.NaN : nearest;
  into.place = node?.place ?? -1;
  into.u =
    node === undefined
      ? Number.NaN
      : combine2(nodeUncertainty(frame, binding, 'vacuum'), vapourUncertainty(frame, binding));
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
  into.margin = npshMargin(
    available,
    metre(frame.plan.unit.design.npshLimitM ?? Number.NaN),
    frame.returnColumnDensity,
  );
  into.place = frame.plan.unit.pumpInletPlace;
}

/**
 * NPSH available, m, with its standard uncertainty as pressure in `into.u`. Takes its inputs through the tally. Velocity head
 * (below 0.1 m) is left out, which is on the safe side.
 */
export function pumpInletNpsh(frame: UnitFrame, into: Wall): Metre {
  const { plan, tally, state, site } = frame;
  const { design } = plan.unit;
  const inletSlot = plan.slot['pump.inlet.pressure'];
  const measured = inletSlot >= 0;
  const slot = measured ? inletSlot : plan.slot['separator.pressure'];
  const read = tally.take(state, slot);
  tally.take(state, plan.slot['return.temperature']);
  const lossRated = measured ? 0 : design.pumpSuctionLossPa;
  if (!frame.stopped && lossRated !== 0) tally.take(state, plan.slot['loop.flow']);
  const column = measured ? 0 : staticHead(frame.returnColumnDensity, metre(columnOverPump(frame) ?? Number.NaN));
  const inlet = pascalAbsolute(read + column - lossNow(frame, lossRated));
  into.u = combine2(
    combine3(
      part(frame, site.slots.pointId[slot] ?? '', absolutePressureUncertainty(frame, slot)),
      part(frame, 'elevations.accuracy', measured ? 0 : frame.returnColumn.elevationU),
      lossUncertainty(frame, lossRated),
    ),
    returnVapourUncertainty(frame),
  );
  return npshAvailable(inlet, frame.returnColumn.vapourPressure, frame.returnColumnDensity);
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
    const margin = boilingMargin(returnPressureAt(frame, wall.elevationM, wall.returnLossPa), temperature);
    if (margin < into.margin) {
      into.margin = margin;
      binding = wall;
    }
  }
  if (binding === undefined) return;
  const powerSlot = binding.plate.slot.power;
  const temperature = celsius(frame.supplyTemperature + resistance * (state.value[powerSlot] ?? Number.NaN));
  const slope = plan.fluid.vapourPressureSlope(temperature);
  const supplySlot = plan.slot['supply.temperature'];
  const anchorSlot = plan.returnAnchor?.slot ?? -1;
  const { pointId } = site.slots;
  into.place = binding.plate.place;
  into.u = combine3(
    combine3(
      part(frame, pointId[anchorSlot] ?? '', absolutePressureUncertainty(frame, anchorSlot)),
      part(frame, 'elevations.accuracy', frame.returnColumn.elevationU),
      lossUncertainty(frame, binding.returnLossPa),
    ),
    part(frame, 'supply.temperature', slope * standardUncertainty(site.slots, state, supplySlot)),
    part(frame, pointId[powerSlot] ?? '', slope * resistance * standardUncertainty(site.slots, state, powerSlot)),
  );
}

function columnOverPump(frame: UnitFrame): number | null {
  const { separatorSurfaceM, pumpInletM } = frame.plan.unit.design;
  return separatorSurfaceM === null || pumpInletM === null ? null : separatorSurfaceM - pumpInletM;
}

/** u of the vapour pressure at a node, Pa, by the thermometer that it was taken from. */
function vapourUncertainty(frame: UnitFrame, i: number): number {
  const { plan, state } = frame;
  const own = plan.nodes.temperatureSlot[i] as number;
  if (own >= 0 && ((state.reasons[own] as number) & badBits) === 0)
    return slopeUncertainty(frame, own, celsius(state.value[own] as number));
  return plan.nodes.onReturn[i] === 1
    ? returnVapourUncertainty(frame)
    : slopeUncertainty(frame, plan.slot['supply.temperature'], frame.supplyTemperature);
}

const returnVapourUncertainty = (frame: UnitFrame): number =>
  slopeUncertainty(frame, frame.plan.slot['return.temperature'], frame.returnTemperature);

function slopeUncertainty(frame: UnitFrame, slot: number, temperature: Celsius): number {
  const { slots } = frame.site;
  const u = frame.plan.fluid.vapourPressureSlope(temperature) * standardUncertainty(slots, frame.state, slot);
  return part(frame, slots.pointId[slot] ?? '', u);
}
