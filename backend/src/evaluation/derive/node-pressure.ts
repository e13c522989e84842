import { returnMainPressure } from '@ebbline/shared/hydraulics/main-pressure';
import { combine2, combine3 } from '@ebbline/shared/uncertainty/combine';
import {
  metre,
  pascalAbsolute,
  pascalDifference,
  type Metre,
  type PascalAbsolute,
} from '@ebbline/shared/units/quantity';
import type { WettedNode } from '../site/compiled-site';
import { followsAmbient, standardUncertainty } from './standard-uncertainty';
import { part } from './uncertainty-budget';
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

/** Takes what the pressures along one main rest on; the standing columns of shape c hang on its reservoir. */
export function takeMainInputs(frame: UnitFrame, main: WettedNode['main'], flowing: boolean): void {
  const { plan, tally, state } = frame;
  const onReservoir = !flowing && !frame.stopped && plan.nodes.hangOnReservoir;
  const anchor = main === 'return' || onReservoir ? plan.returnAnchor : plan.supplyAnchor;
  tally.take(state, anchor?.slot ?? -1);
  tally.take(state, plan.slot[`${main}.temperature`]);
  if (flowing && plan.nodesNeedFlow) tally.take(state, plan.slot['loop.flow']);
}

/** Absolute pressure on the return main at an elevation, by its loss to the separator at rated flow. */
export function returnPressureAt(frame: UnitFrame, elevation: Metre, lossAtRatedFlowPa: number): PascalAbsolute {
  return returnMainPressure(
    frame.returnAnchorPressure,
    frame.returnColumnDensity,
    frame.plan.returnAnchor?.elevationM ?? metre(Number.NaN),
    elevation,
    pascalDifference(lossNow(frame, lossAtRatedFlowPa)),
  );
}

/** Friction loss at the present flow, Pa; 0 while the loop stands, and for a segment without loss, whatever the flow meter says. */
export const lossNow = (frame: UnitFrame, lossAtRatedFlowPa: number): number =>
  lossAtRatedFlowPa === 0 ? 0 : lossAtRatedFlowPa * frame.nodes.lossShare;

/** u of `lossNow`, Pa, by its two parts: the commissioned resistance and the flow. */
export function lossUncertainty(frame: UnitFrame, lossAtRatedFlowPa: number): number {
  if (lossAtRatedFlowPa === 0) return 0;
  const { nodes } = frame;
  return combine2(
    part(frame, 'nodes.loss', lossAtRatedFlowPa * nodes.lossOwnU),
    part(frame, 'loop.flow', lossAtRatedFlowPa * nodes.lossFlowU),
  );
}

/**
 * u of a node's pressure, as an absolute one or against ambient; `flowing` false: of the standing column. Of a gauge or
 * vacuum anchor the barometer's error cancels against ambient, of an absolute one it does not.
 */
export function nodeUncertainty(
  frame: UnitFrame,
  i: number,
  against: 'vacuum' | 'ambient',
  flowing = !frame.stopped,
): number {
  const { plan, site } = frame;
  const nodes = plan.nodes;
  const onReturn = nodes.onReturn[i] === 1 || (!flowing && !frame.stopped && nodes.hangOnReservoir);
  const column = onReturn ? frame.returnColumn : frame.supplyColumn;
  const anchor = onReturn ? plan.returnAnchor : plan.supplyAnchor;
  return combine3(
    combine2(
      part(frame, site.slots.pointId[anchor?.slot ?? -1] ?? '', column.anchorU),
      part(frame, 'ambient.pressure', against === 'vacuum' ? column.barometerU : column.barometerBelowU),
    ),
    part(frame, 'elevations.accuracy', column.elevationU),
    flowing ? lossUncertainty(frame, nodes.lossPa[i] as number) : 0,
  );
}

/** u of a measured pressure as an absolute one: a gauge or vacuum reading carries the barometer's with it. */
export function absolutePressureUncertainty(frame: UnitFrame, slot: number): number {
  const own = standardUncertainty(frame.site.slots, frame.state, slot);
  return followsAmbient(frame.site.slots, slot) ? combine2(own, frame.ambient.u) : own;
}

/** Index of the node with the least (`sign` −1) or greatest pressure now of those in the loop; −1 where one can't be known. */
export function extremeNode({ nodes, plan }: UnitFrame, sign: 1 | -1): number {
  let best = -1;
  for (let i = 0; i < plan.nodes.count; i += 1) {
    if (nodes.inLoop[i] === 0) continue;
    const pressure = nodes.now[i] as number;
    if (!Number.isFinite(pressure)) return -1;
    if (best < 0 || sign * pressure > sign * (nodes.now[best] as number)) best = i;
  }
  return best;
}

/** The node with its pressure, for pictures. */
export function nodeExtreme(
  frame: UnitFrame,
  sign: 1 | -1,
): { readonly pressure: PascalAbsolute; readonly node: WettedNode } | null {
  const i = extremeNode(frame, sign);
  const node = frame.plan.unit.nodes[i];
  return node === undefined ? null : { pressure: pascalAbsolute(frame.nodes.now[i] as number), node };
}
