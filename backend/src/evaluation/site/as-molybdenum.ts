import type { MolybdateForm } from '@ebbline/shared/contract/hand-entry';
import type { WaterParameterId } from '@ebbline/shared/contract/water-parameters';
import { molybdenumOfMolybdate } from '@ebbline/shared/fluid-properties/molybdate';

/** Every molybdate concentration in the program is counted as Mo; other parameters come back as they are. */
export const asMolybdenum = (id: WaterParameterId, value: number, form: MolybdateForm | null): number =>
  id === 'molybdate' && form === 'MoO4' ? molybdenumOfMolybdate(value) : value;
