import type { LowerWallKind } from '@ebbline/shared/contract/live-feed';
import type { CompiledSite } from '../site/compiled-site';
import { lowerWallGuardPa } from './derive-constants';
import { hasPumpInletWall, nodeWall, plateWall, pumpInletWall, type Wall } from './lower-walls';
import { takeNodeInputs } from './node-pressure';
import type { UnitFrame } from './unit-frame';
import { unitPlan } from './unit-plan';

/**
 * The wall that binds. All margins are pressures that shrink alike when the separator is drawn deeper, so the least
 * one in Pa is met first (common practice, no source). A wall that already stands within its guard goes before one that does not, and
 * of two such the one with the smaller share of its guard: what needs a person is never hidden by a nearer but sound wall.
 */
export interface NearestWall extends Wall {
  kind: LowerWallKind | null;
}

const candidate: Wall = { margin: Number.NaN, u: Number.NaN, place: -1 };

/** Finds the wall that binds and writes it into `into`; takes all inputs through the frame's tally. NaN where one wall can't be known. */
export function nearestLowerWall(frame: UnitFrame, into: NearestWall): void {
  into.margin = Number.NaN;
  into.u = Number.NaN;
  into.place = -1;
  into.kind = null;
  takeNodeInputs(frame, !frame.stopped);
  const { budget } = frame;
  // The budget is that of the wall that binds, which is known only at the end.
  frame.budget = null;
  nodeWall(frame, candidate);
  keepNearer('node', candidate, into);
  if (hasPumpInletWall(frame)) {
    pumpInletWall(frame, candidate);
    keepNearer('pumpInlet', candidate, into);
  }
  if (frame.plan.plateWalls.length > 0) {
    plateWall(frame, candidate);
    keepNearer('plateWall', candidate, into);
  }
  frame.budget = budget;
  if (budget === null) return;
  if (into.kind === 'node') nodeWall(frame, candidate);
  else if (into.kind === 'pumpInlet') pumpInletWall(frame, candidate);
  else if (into.kind === 'plateWall') plateWall(frame, candidate);
}

function keepNearer(kind: LowerWallKind, wall: Wall, into: NearestWall): void {
  if (into.kind !== null && !binds(kind, wall.margin, into.kind, into.margin)) return;
  into.margin = wall.margin;
  into.u = wall.u;
  into.place = wall.place;
  into.kind = kind;
}

function binds(kind: LowerWallKind, margin: number, keptKind: LowerWallKind, kept: number): boolean {
  const share = margin / lowerWallGuardPa[kind];
  const keptShare = kept / lowerWallGuardPa[keptKind];
  return share < 1 || keptShare < 1 ? share < keptShare : margin < kept;
}

/**
 * Guard of the wall that `lowerWallMargin` names by its `where` (index into the holder's places), Pa. Places of
 * plates and the pump's inlet are walls of their own kind; every other place is a node.
 */
export function lowerWallGuardAt(site: CompiledSite, unitIndex: number, place: number): number {
  return lowerWallGuardPa[lowerWallKindAt(site, unitIndex, place)];
}

export function lowerWallKindAt(site: CompiledSite, unitIndex: number, place: number): LowerWallKind {
  const plan = unitPlan(site, unitIndex);
  if (place >= 0 && place === plan.unit.pumpInletPlace) return 'pumpInlet';
  return plan.plateWalls.some((wall) => wall.plate.place === place) ? 'plateWall' : 'node';
}
