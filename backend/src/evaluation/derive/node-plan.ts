import type { Alike } from '../site/alike';
import type { CompiledUnit } from '../site/compiled-site';
import type { Metre } from '@ebbline/shared/units/quantity';

/** A measured pressure at a known elevation, from which the pressures along one main are worked out. */
export interface Anchor {
  readonly slot: number;
  readonly elevationM: Metre;
}

/** The wetted nodes of a unit as columns, in the order of the site file; looked up once a site. */
export interface NodePlan {
  readonly count: number;
  readonly onReturn: Uint8Array;
  /** From the node up to the anchor of its main, m; NaN without one. */
  readonly headM: Float64Array;
  /** The same for a stopped loop: in shape c all water hangs on the reservoir once its pump stands. */
  readonly stoppedHeadM: Float64Array;
  readonly hangOnReservoir: boolean;
  readonly lossPa: Float64Array;
  /** Of the branch that the node belongs to; −1 = it belongs to a main. */
  readonly isolatedSlot: Int32Array;
  readonly temperatureSlot: Int32Array;
  readonly pressureSlot: Int32Array;
  readonly stoppedSlot: Int32Array;
}

export function nodePlan(
  { nodes, branches, shape }: CompiledUnit,
  supplyAnchor: Anchor | null,
  returnAnchor: Anchor | null,
  slotOf: (id: string) => number,
  alike: Alike,
): NodePlan {
  const hangOnReservoir = shape === 'c' && returnAnchor !== null;
  const anchorOf = (main: 'supply' | 'return', stopped: boolean): number =>
    (main === 'return' || (stopped && hangOnReservoir) ? returnAnchor : supplyAnchor)?.elevationM ?? Number.NaN;
  const branchOf = (i: number) => branches[nodes[i]?.branch ?? -1];
  return {
    count: nodes.length,
    onReturn: alike.once(Uint8Array.from(nodes, ({ main }) => (main === 'return' ? 1 : 0))),
    headM: alike.once(Float64Array.from(nodes, ({ main, elevationM }) => anchorOf(main, false) - elevationM)),
    stoppedHeadM: alike.once(Float64Array.from(nodes, ({ main, elevationM }) => anchorOf(main, true) - elevationM)),
    hangOnReservoir,
    lossPa: alike.once(Float64Array.from(nodes, ({ lossAtRatedFlowPa }) => lossAtRatedFlowPa)),
    isolatedSlot: Int32Array.from(nodes, (_, i) => branchOf(i)?.slot.isolated ?? -1),
    temperatureSlot: Int32Array.from(nodes, ({ main }, i) =>
      main === 'return' ? (branchOf(i)?.slot.returnTemperature ?? -1) : -1,
    ),
    pressureSlot: Int32Array.from(nodes, ({ id }) => slotOf(`node.${id}.pressure`)),
    stoppedSlot: Int32Array.from(nodes, ({ id }) => slotOf(`node.${id}.pressureStopped`)),
  };
}
