import { drivingPressure } from '@ebbline/shared/hydraulics/pressure-margins';
import { combine2, combine3, expanded } from '@ebbline/shared/uncertainty/combine';
import { kilogramPerCubicMetre, metre } from '@ebbline/shared/units/quantity';
import { part } from '../uncertainty-budget';
import { followsAmbient, standardUncertainty } from '../standard-uncertainty';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

/** Supply tank minus separator with the static head between them, Pa; mean density of both mains. */
export function deriveDrivingPressure(frame: UnitFrame): void {
  const { tally, state, plan, site, ambient } = frame;
  const supplySlot = plan.supplyAnchor?.slot ?? -1;
  const returnSlot = plan.returnAnchor?.slot ?? -1;
  tally.begin();
  tally.take(state, supplySlot);
  tally.take(state, returnSlot);
  tally.take(state, plan.slot['supply.temperature']);
  tally.take(state, plan.slot['return.temperature']);
  const value = drivingPressure(
    frame.supplyAnchorPressure,
    plan.supplyAnchor?.elevationM ?? metre(Number.NaN),
    frame.returnAnchorPressure,
    plan.returnAnchor?.elevationM ?? metre(Number.NaN),
    kilogramPerCubicMetre((frame.supplyColumnDensity + frame.returnColumnDensity) / 2),
  );
  // Two gauge readings share the barometer and its error cancels; one gauge against one absolute keeps it.
  const barometerU = followsAmbient(site.slots, supplySlot) === followsAmbient(site.slots, returnSlot) ? 0 : ambient.u;
  const pointId = site.slots.pointId;
  const u = combine2(
    combine3(
      part(frame, pointId[supplySlot] ?? '', standardUncertainty(site.slots, state, supplySlot)),
      part(frame, pointId[returnSlot] ?? '', standardUncertainty(site.slots, state, returnSlot)),
      part(frame, 'ambient.pressure', barometerU),
    ),
    part(frame, 'elevations.accuracy', frame.supplyColumn.elevationU),
  );
  writeDerived(state, plan.slot.drivingPressure, frame.nowMs, tally, value, expanded(u), -1);
}
