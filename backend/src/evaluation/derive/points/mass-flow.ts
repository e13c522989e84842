import { massFlow } from '@ebbline/shared/heat/mass-flow';
import { expanded } from '@ebbline/shared/uncertainty/combine';
import { standardUncertainty } from '../standard-uncertainty';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

/** Mass flow of the loop, with the density at the side where the meter sits. The density's own uncertainty (1 ppm) is left out. */
export function deriveMassFlow(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { slot, unit } = plan;
  const atReturn = unit.flowMeterSide === 'return';
  tally.begin();
  tally.take(state, slot['loop.flow']);
  tally.take(state, slot[atReturn ? 'return.temperature' : 'supply.temperature']);
  const density = atReturn ? frame.returnDensity : frame.supplyDensity;
  const u = density * standardUncertainty(frame.site.slots, state, slot['loop.flow']);
  writeDerived(state, slot.massFlow, frame.nowMs, tally, massFlow(density, frame.flow), expanded(u), -1);
}
