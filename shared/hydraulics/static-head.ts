import { standardGravityMPerS2 } from '../units/constants';
import { pascalDifference, type KilogramPerCubicMetre, type Metre, type PascalDifference } from '../units/quantity';

/** ρ g Δz of a standing column, Pa (hydrostatics). The density is that of the leg's own temperature; 1 m of water is 9.8 kPa. */
export const staticHead = (density: KilogramPerCubicMetre, height: Metre): PascalDifference =>
  pascalDifference(density * standardGravityMPerS2 * height);
