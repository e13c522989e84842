import { flowLoss } from '@ebbline/shared/hydraulics/flow-loss';
import { returnMainPressure, supplyMainPressure } from '@ebbline/shared/hydraulics/main-pressure';
import { rectangular } from '@ebbline/shared/uncertainty/combine';
import { celsius, cubicMetrePerSecond, metre, pascalDifference } from '@ebbline/shared/units/quantity';
import { badBits } from '../slots/quality-reasons';
import { lossHalfWidth } from './derive-constants';
import { standardUncertainty } from './standard-uncertainty';
import type { FrameReadings } from './frame-readings';

const node = metre(0);
const oneAtRatedFlow = pascalDifference(1);
const noLoss = pascalDifference(0);

/** Pressure of every wetted node of a unit, worked out once a second: margins, walls, pictures and points read it here. */
export class NodePressures {
  /** In the state that the loop is in now; NaN where an input is bad. */
  readonly now: Float64Array;
  /** Standing columns alone: what a stop would leave, or what is, where the loop stands. */
  readonly stopped: Float64Array;
  readonly vapour: Float64Array;
  /** 0 for a node of a branch that is isolated: no suction reaches it, and the loop's margins say nothing of it. */
  readonly inLoop: Uint8Array;
  /** Loss now over that at rated flow; 0 while the loop stands, NaN where the flow is not known. */
  lossShare = Number.NaN;
  /** u of a loss of 1 Pa at rated flow: that of the commissioned resistance, and that of the flow (twice, as the loss goes with its square). */
  lossOwnU = Number.NaN;
  lossFlowU = Number.NaN;

  /** Room for so many nodes; the unit that is read may have fewer. */
  constructor(readonly capacity: number) {
    this.now = new Float64Array(capacity);
    this.stopped = new Float64Array(capacity);
    this.vapour = new Float64Array(capacity);
    this.inLoop = new Uint8Array(capacity).fill(1);
  }

  read(frame: FrameReadings): void {
    this.readLoss(frame);
    const plan = frame.plan.nodes;
    for (let i = 0; i < plan.count; i += 1) {
      const onReturn = plan.onReturn[i] === 1;
      const density = onReturn ? frame.returnColumnDensity : frame.supplyColumnDensity;
      const anchor = onReturn ? frame.returnAnchorPressure : frame.supplyAnchorPressure;
      const head = metre(plan.headM[i] as number);
      const lossRated = plan.lossPa[i] as number;
      // A segment without loss has none, whatever the flow meter says.
      const loss = lossRated === 0 ? noLoss : pascalDifference(lossRated * this.lossShare);
      const pressureNow = (onReturn ? returnMainPressure : supplyMainPressure)(anchor, density, head, node, loss);
      this.now[i] = pressureNow;
      const hangsOn = plan.hangOnReservoir ? frame.returnAnchorPressure : anchor;
      this.stopped[i] = frame.stopped
        ? pressureNow
        : supplyMainPressure(hangsOn, density, metre(plan.stoppedHeadM[i] as number), node, noLoss);
      this.vapour[i] = this.vapourPressure(frame, i, onReturn);
      this.inLoop[i] = isShut(frame, plan.isolatedSlot[i] as number) ? 0 : 1;
    }
  }

  /** Of the hottest water that is known there: a branch's own return, else the main's. */
  private vapourPressure(frame: FrameReadings, i: number, onReturn: boolean): number {
    const slot = frame.plan.nodes.temperatureSlot[i] as number;
    return isGood(frame, slot)
      ? frame.plan.fluid.vapourPressure(celsius(frame.state.value[slot] as number))
      : (onReturn ? frame.returnColumn : frame.supplyColumn).vapourPressure;
  }

  private readLoss(frame: FrameReadings): void {
    this.lossShare = 0;
    this.lossOwnU = 0;
    this.lossFlowU = 0;
    if (frame.stopped) return;
    const { plan, site, state, flow } = frame;
    const rated = plan.unit.design.ratedFlowM3PerS;
    this.lossShare = flowLoss(oneAtRatedFlow, flow, cubicMetrePerSecond(rated));
    this.lossOwnU = this.lossShare * rectangular(lossHalfWidth);
    this.lossFlowU = (2 * flow * standardUncertainty(site.slots, state, plan.slot['loop.flow'])) / (rated * rated);
  }
}

const isGood = ({ state }: FrameReadings, slot: number): boolean =>
  slot >= 0 && ((state.reasons[slot] as number) & badBits) === 0;

/** A switch that is bad counts as open: a branch that may be in the loop is watched. */
const isShut = (frame: FrameReadings, slot: number): boolean => isGood(frame, slot) && frame.state.value[slot] === 1;
