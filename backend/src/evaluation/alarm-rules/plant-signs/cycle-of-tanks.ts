import type { UnitContext } from '../judge-context';

/** A cycle of alternating tanks whose usual transfer is not known yet, ms: common practice, no source. */
const unknownCycleMs = 60_000;
/** A span has to hold at least one whole transfer, though that comes a little late. */
const transfersOfSpan = 1.2;

/** Time within which alternating tanks go once through all that they do, ms. */
export function cycleOfTanksMs({ plant, unitIndex }: Pick<UnitContext, 'plant' | 'unitIndex'>): number {
  const usual = plant.transfers.usualTime[unitIndex] as number;
  return Number.isNaN(usual) ? unknownCycleMs : transfersOfSpan * usual;
}
