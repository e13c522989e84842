import type { PlantParameters, UnitKind } from './plant-parameters';
import { unitTypeBench } from './unit-type-bench';
import { unitTypeH } from './unit-type-h';
import { unitTypeM } from './unit-type-m';

export const unitTypes: Readonly<Record<UnitKind, PlantParameters>> = {
  M: unitTypeM,
  H: unitTypeH,
  bench: unitTypeBench,
};
