import type { LowerWallKind } from '@ebbline/shared/contract/live-feed';
import type { CompiledSite } from '../site/compiled-site';
import { lowerWallGuardPa } from './derive-constants';
import { hasPumpInletWall, nodeWall, plateWall, pumpInletWall, type Wall } from './lower-walls';
import { takeNodeInputs } from './node-pressure';
import type { UnitFrame } from './unit-frame';
import { unitPlan } from './unit-plan';

/** The wall that binds: the one with the smallest margin as a share of its guard. */
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
}

function keepNearer(kind: LowerWallKind, wall: Wall, into: NearestWall): void {
  if (into.kind !== null && !(wall.margin / lowerWallGuardPa[kind] < into.margin / lowerWallGuardPa[into.kind])) return;
  into.margin = wall.margin;
  into.u = wall.u;
  into.place = wall.place;
  into.kind = kind;
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
