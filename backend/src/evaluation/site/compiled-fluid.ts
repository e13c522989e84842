import { glycolByMass, glycolByVolume } from '@ebbline/shared/fluid-properties/glycol-fluid';
import type { Fluid } from '@ebbline/shared/fluid-properties/fluid';
import { waterFluid } from '@ebbline/shared/fluid-properties/water-fluid';
import type { MassFraction, VolumeFraction } from '@ebbline/shared/units/quantity';

/** What the site file says of a liquid, with the share of glycol as its source counts it. */
export type CompiledFluid =
  | { readonly kind: 'water' }
  | { readonly kind: 'propyleneGlycol'; readonly source: 'ashrae'; readonly fraction: VolumeFraction }
  | { readonly kind: 'propyleneGlycol'; readonly source: 'melinder2010'; readonly fraction: MassFraction };

/** Its properties. Water where the file says nothing. */
export function fluidOf(fluid: CompiledFluid | undefined): Fluid {
  if (fluid === undefined || fluid.kind === 'water') return waterFluid;
  return fluid.source === 'ashrae' ? glycolByVolume(fluid.fraction) : glycolByMass(fluid.fraction);
}
