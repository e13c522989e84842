import type { UnitKind } from '../plant/plant-parameters';

export const litrePerMin = 1 / 60000;

/** A small unit has small fittings: air through one, against type M. */
export const airShareOfM: Readonly<Record<UnitKind, number>> = { M: 1, H: 1.5, bench: 0.2 };
/** Water through a leak or a top-up valve, against type M, by what the loop holds. */
export const waterShareOfM: Readonly<Record<UnitKind, number>> = { M: 1, H: 2, bench: 0.02 };
