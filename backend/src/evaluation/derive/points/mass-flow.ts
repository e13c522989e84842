import { massFlow } from '@ebbline/shared/heat/mass-flow';
import type { UnitFrame } from '../unit-frame';
import { partOf, writePoint } from '../write-point';

/** Mass flow of the loop, with the density at the side where the meter sits. The density's own uncertainty (1 ppm) is left out. */
export function deriveMassFlow(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { slot, unit } = plan;
  const atReturn = unit.flowMeterSide === 'return';
  tally.begin();
  tally.take(state, slot['loop.flow']);
  tally.take(state, slot[atReturn ? 'return.temperature' : 'supply.temperature']);
  const density = atReturn ? frame.returnDensity : frame.supplyDensity;
  const u = partOf(frame, slot['loop.flow'], density);
  writePoint(frame, slot.massFlow, massFlow(density, frame.flow), u);
}
