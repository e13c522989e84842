import { flowLoss } from '@ebbline/shared/hydraulics/flow-loss';
import { returnMainPressure, supplyMainPressure } from '@ebbline/shared/hydraulics/main-pressure';
import { staticHead } from '@ebbline/shared/hydraulics/static-head';
import { combine2, rectangular } from '@ebbline/shared/uncertainty/combine';
import {
  cubicMetrePerSecond,
  metre,
  pascalAbsolute,
  pascalDifference,
  type Metre,
  type PascalAbsolute,
} from '@ebbline/shared/units/quantity';
import type { WettedNode } from '../site/compiled-site';
import { lossHalfWidth } from './derive-constants';
import { followsAmbient, standardUncertainty } from './standard-uncertainty';
import type { UnitFrame } from './unit-frame';

/** Takes what the pressures of all nodes rest on: anchors, temperatures of their mains and, while water flows, the flow. */
export function takeNodeInputs(frame: UnitFrame, flowing: boolean): void {
  const { plan, tally, state } = frame;
  if (plan.unit.nodes.length === 0) tally.take(state, -1);
  if (plan.hasSupplyNodes) {
    tally.take(state, plan.supplyAnchor?.slot ?? -1);
    tally.take(state, plan.slot['supply.temperature']);
  }
  if (plan.hasReturnNodes) {
    tally.take(state, plan.returnAnchor?.slot ?? -1);
    tally.take(state, plan.slot['return.temperature']);
  }
  if (flowing && plan.nodesNeedFlow) tally.take(state, plan.slot['loop.flow']);
}

/** Absolute pressure at a wetted node; with `flowing` false the standing column alone. Losses count from the anchor in use. */
export function nodePressure(frame: UnitFrame, node: WettedNode, flowing: boolean): PascalAbsolute {
  return node.main === 'supply'
    ? supplyMainPressure(
        frame.supplyAnchorPressure,
        frame.supplyDensity,
        frame.plan.supplyAnchor?.elevationM ?? metre(Number.NaN),
        metre(node.elevationM),
        pascalDifference(lossNow(frame, node.lossAtRatedFlowPa, flowing)),
      )
    : returnPressureAt(frame, metre(node.elevationM), node.lossAtRatedFlowPa, flowing);
}

/** Absolute pressure on the return main at an elevation, by its loss to the separator at rated flow. */
export function returnPressureAt(
  frame: UnitFrame,
  elevation: Metre,
  lossAtRatedFlowPa: number,
  flowing: boolean,
): PascalAbsolute {
  return returnMainPressure(
    frame.returnAnchorPressure,
    frame.returnDensity,
    frame.plan.returnAnchor?.elevationM ?? metre(Number.NaN),
    elevation,
    pascalDifference(lossNow(frame, lossAtRatedFlowPa, flowing)),
  );
}

/** Friction loss at the present flow, Pa; 0 for a segment without loss, whatever the flow meter says. */
export function lossNow(frame: UnitFrame, lossAtRatedFlowPa: number, flowing: boolean): number {
  if (!flowing || lossAtRatedFlowPa === 0) return 0;
  return flowLoss(
    pascalDifference(lossAtRatedFlowPa),
    frame.flow,
    cubicMetrePerSecond(frame.plan.unit.design.ratedFlowM3PerS),
  );
}

/** u of `lossNow`, Pa: that of the commissioned resistance and that of the flow (twice, as the loss goes with its square). */
export function lossUncertainty(frame: UnitFrame, lossAtRatedFlowPa: number, flowing: boolean): number {
  if (!flowing || lossAtRatedFlowPa === 0) return 0;
  const share = frame.flow / frame.plan.unit.design.ratedFlowM3PerS;
  const flowU =
    standardUncertainty(frame.site.slots, frame.state, frame.plan.slot['loop.flow']) /
    frame.plan.unit.design.ratedFlowM3PerS;
  return combine2(
    lossAtRatedFlowPa * share * share * rectangular(lossHalfWidth),
    2 * lossAtRatedFlowPa * share * flowU,
  );
}

/** u of the height between an anchor and a place, as pressure. The density's own part is below 0.01 kPa and left out. */
export function elevationUncertainty(frame: UnitFrame, main: WettedNode['main']): number {
  const density = main === 'supply' ? frame.supplyDensity : frame.returnDensity;
  return staticHead(density, metre(rectangular(frame.plan.unit.design.elevationAccuracyM)));
}

/** u of a measured pressure as an absolute one: a gauge or vacuum reading carries the barometer's with it. */
export function absolutePressureUncertainty(frame: UnitFrame, slot: number): number {
  const own = standardUncertainty(frame.site.slots, frame.state, slot);
  return followsAmbient(frame.site.slots, slot) ? combine2(own, frame.ambient.u) : own;
}

/** u of ambient minus a measured pressure: in a gauge or vacuum reading the barometer's error cancels. */
export function belowAmbientUncertainty(frame: UnitFrame, slot: number): number {
  const own = standardUncertainty(frame.site.slots, frame.state, slot);
  return followsAmbient(frame.site.slots, slot) ? own : combine2(own, frame.ambient.u);
}

/** Slot of the pressure that a node's is worked out from. */
export const anchorSlot = (frame: UnitFrame, node: WettedNode): number =>
  (node.main === 'supply' ? frame.plan.supplyAnchor : frame.plan.returnAnchor)?.slot ?? -1;

/** Highest and lowest of the nodes' pressures as they are now; NaN where one can't be known. For pictures. */
export function nodeExtreme(
  frame: UnitFrame,
  sign: 1 | -1,
  flowing: boolean,
): { readonly pressure: PascalAbsolute; readonly node: WettedNode } | null {
  let best: { pressure: PascalAbsolute; node: WettedNode } | null = null;
  for (const node of frame.plan.unit.nodes) {
    const pressure = nodePressure(frame, node, flowing);
    if (!Number.isFinite(pressure)) return null;
    if (best === null || sign * pressure > sign * best.pressure) best = { pressure: pascalAbsolute(pressure), node };
  }
  return best;
}

/** Lowest and highest pressure of the wetted nodes, Pa; both NaN where one can't be known. */
export interface PressureExtremes {
  lowest: number;
  highest: number;
}

/** The same two numbers without their places, written into `into`: for every second. */
export function nodeExtremes(frame: UnitFrame, flowing: boolean, into: PressureExtremes): void {
  let lowest = Infinity;
  let highest = -Infinity;
  for (const node of frame.plan.unit.nodes) {
    const pressure = nodePressure(frame, node, flowing);
    // A NaN makes both NaN, and nothing takes that back.
    lowest = Math.min(lowest, pressure);
    highest = Math.max(highest, pressure);
  }
  const known = lowest <= highest;
  into.lowest = known ? lowest : Number.NaN;
  into.highest = known ? highest : Number.NaN;
}
