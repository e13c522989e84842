import { airThroughOpening } from '@ebbline/shared/hydraulics/air-through-opening';
import { freeAirOfMass } from '@ebbline/shared/hydraulics/free-air';
import { celsius, pascalAbsolute } from '@ebbline/shared/units/quantity';
import { usable, type UnitContext } from '../judge-context';
import { oldEnd, stepOf, type Ring } from '../step';
import { AirSignal, branchFlowSignal, branchPressureSignal } from './air-memory';
import { fallOfFlow, shutFlowOf } from './fall-of-flow';

/** Rise of a branch over its neighbours that an open server hose gives within a second or two, Pa; common practice, no source. */
const hoseRisePa = 20_000;
/** Gas in the common return lifts the neighbours too, over the receiver, by more than this: Pa. A branch that is shut does not. */
const neighboursRisePa = 300;
/** After the step they stand so much higher as long as gas comes: Pa. A change-over of the tanks moves them by less. */
const neighboursStayPa = 1500;
/** So does the branch itself over them. */
const branchStaysPa = hoseRisePa / 4;
const ambientPa = 101_325;
const roomC = 25;

/** A branch that is full of gas loses its flow by more than this share beside the others. Common practice, no source. */
const lockedFall = 0.2;

/**
 * Free air that one branch shows, m³/s: by its return pressure, or, where its check valve let the air into its supply too, by a flow that is
 * gone while gas lifts the others: full of gas it stands no higher than they do. NaN where its pressures do not tell.
 */
export function airOfBranchAlone(context: UnitContext): number {
  const hose = context.unit.design.hoseBoreM;
  if (hose === null) return Number.NaN;
  const risen = airOfHighestBranch(context, hose);
  return Number.isNaN(risen) ? risen : Math.max(risen, airOfLockedBranch(context, hose));
}

/** 0 where no branch loses its flow alone, or nothing lifts the others. A branch that is shut or blocked lifts nobody. */
function airOfLockedBranch(context: UnitContext, hose: number): number {
  const { rings } = context.air;
  const first = firstOf(context);
  const step: Ring = (signal) => stepOf(rings, signal);
  let worst = 0;
  let locked = -1;
  let sum = 0;
  let count = 0;
  for (let branch = 0; branch < context.slots.branchFlow.length; branch += 1) {
    const fall = fallOfFlow(context, first, branch);
    if (Number.isNaN(fall)) continue;
    sum += fall;
    count += 1;
    if (fall <= worst) continue;
    worst = fall;
    locked = branch;
  }
  if (locked < 0 || count < 2) return 0;
  const alone = worst - (sum - worst) / (count - 1);
  const common = neighboursOf(context, locked, step) - step(first + AirSignal.separatorPressure);
  return alone > lockedFall && common > neighboursStayPa ? Math.min(1, alone) * airOfHose(context, hose) : 0;
}

/**
 * By return pressure alone: gas chokes its return hose, so that it rises over its
 * neighbours, and reaches the common return, so that they rise over the receiver. A change-over of alternating tanks
 * moves all branches alike, and the neighbours less than the receiver. NaN where fewer than two branches are measured.
 */
function airOfHighestBranch(context: UnitContext, hose: number): number {
  const step: Ring = (signal) => stepOf(context.air.rings, signal);
  const branch = highestBranch(context, step);
  if (branch < 0) return Number.NaN;
  const neighbours = neighboursOf(context, branch, step);
  const common = neighbours - step(firstOf(context) + AirSignal.separatorPressure);
  const own = step(branchPressureSignal(firstOf(context), branch)) - neighbours;
  if (Number.isNaN(own + common)) return Number.NaN;
  return common > neighboursRisePa && own > 0 ? (own / hoseRisePa) * airOfHose(context, hose) : 0;
}

/** After the step: does the air still come? `null` where the branches do not tell. */
export function branchStillShowsAir(context: UnitContext): boolean | null {
  const { air, unitIndex } = context;
  const first = firstOf(context);
  const now: Ring = (signal) => air.rings.at(signal, 0);
  const named = air.namedBranch[unitIndex] as number;
  const branch = named >= 0 ? named : highestBranch(context, now);
  if (branch < 0) return null;
  const neighbours = neighboursOf(context, branch, now);
  const common = neighbours - now(first + AirSignal.separatorPressure);
  const own = now(branchPressureSignal(first, branch)) - neighbours;
  if (Number.isNaN(own + common)) return null;
  if (common > (air.neighboursBefore[unitIndex] as number) + neighboursStayPa) return true;
  // Its own pressure tells nothing more.
  const shut = now(branchFlowSignal(first, branch)) < shutFlowOf(context, branch);
  return !shut && own > branchStaysPa;
}

/** Remembers how far the neighbours stood over the receiver before the step. */
export function rememberNeighbours(context: UnitContext, branch: number): void {
  const before: Ring = (signal) => oldEnd(context.air.rings, signal);
  context.air.neighboursBefore[context.unitIndex] =
    neighboursOf(context, branch, before) - before(firstOf(context) + AirSignal.separatorPressure);
}

const firstOf = ({ air, unitIndex }: UnitContext): number => air.firstSignal[unitIndex] as number;

function highestBranch(context: UnitContext, look: Ring): number {
  let highest = Number.NEGATIVE_INFINITY;
  let found = -1;
  for (let branch = 0; branch < context.slots.branchReturnPressure.length; branch += 1) {
    const pressure = look(branchPressureSignal(firstOf(context), branch));
    if (pressure > highest) {
      highest = pressure;
      found = branch;
    }
  }
  return found;
}

/** Mean of the other branches that are known; NaN where none is. */
function neighboursOf(context: UnitContext, branch: number, look: Ring): number {
  let sum = 0;
  let count = 0;
  for (let other = 0; other < context.slots.branchReturnPressure.length; other += 1) {
    const pressure = look(branchPressureSignal(firstOf(context), other));
    if (other === branch || Number.isNaN(pressure)) continue;
    sum += pressure;
    count += 1;
  }
  return sum / count;
}

/** Sonic flow into one open hose; the weather moves it by a few percent only. */
function airOfHose(context: UnitContext, boreM: number): number {
  const separator = usable(context.state, context.slots.separatorPressure);
  const { openingDischargeCoefficient } = context.unit.design;
  const areaM2 = (Math.PI / 4) * boreM * boreM;
  const into = pascalAbsolute(separator);
  return freeAirOfMass(
    airThroughOpening(openingDischargeCoefficient, areaM2, pascalAbsolute(ambientPa), celsius(roomC), into),
  );
}
