import { readUnitSystemBy, type UnitSystem } from '../../frontend/src/text/unit-system';

/** Says in which units screens are read from now on; a test that takes others gives the metric ones back. */
export const readIn = (system: UnitSystem): void => readUnitSystemBy(() => system);
