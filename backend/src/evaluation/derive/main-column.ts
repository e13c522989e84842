import { staticHead } from '@ebbline/shared/hydraulics/static-head';
import { rectangular } from '@ebbline/shared/uncertainty/combine';
import { metre, pascalAbsolute, type PascalAbsolute } from '@ebbline/shared/units/quantity';
import type { WettedNode } from '../site/compiled-site';
import { followsAmbient, standardUncertainty } from './standard-uncertainty';
import type { FrameReadings } from './frame-readings';

/** What all pressures along one main rest on, once a second. NaN where an input is bad. */
export class MainColumn {
  /** u of the anchor's own reading, Pa, and what the barometer adds to it as an absolute pressure and against ambient. */
  anchorU = Number.NaN;
  barometerU = Number.NaN;
  barometerBelowU = Number.NaN;
  /**
   * u of the column between the anchor and a place, Pa. The site file states how well the height of one above the other is known, so it
   * counts once. The density's own part is below 0.01 kPa and left out.
   */
  elevationU = Number.NaN;
  vapourPressure: PascalAbsolute = pascalAbsolute(Number.NaN);

  constructor(private readonly main: WettedNode['main']) {}

  /**
   * A gauge or vacuum reading carries the barometer's error with it as an absolute pressure; against ambient that error
   * cancels. With an absolute one it is the other way about. The density is that of the leg's own temperature: 0.9 % between 25 and 50 °C.
   */
  read(frame: FrameReadings): void {
    const { plan, state, site, ambient } = frame;
    const isSupply = this.main === 'supply';
    const slot = (isSupply ? plan.supplyAnchor : plan.returnAnchor)?.slot ?? -1;
    const follows = slot >= 0 && followsAmbient(site.slots, slot);
    this.anchorU = standardUncertainty(site.slots, state, slot);
    this.barometerU = follows ? ambient.u : 0;
    this.barometerBelowU = follows ? 0 : ambient.u;
    const density = isSupply ? frame.supplyColumnDensity : frame.returnColumnDensity;
    this.elevationU = staticHead(density, metre(rectangular(plan.unit.design.elevationAccuracyM)));
    this.vapourPressure = plan.fluid.vapourPressure(isSupply ? frame.supplyTemperature : frame.returnTemperature);
  }
}
