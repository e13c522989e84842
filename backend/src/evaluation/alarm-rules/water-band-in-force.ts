import type { WaterParameterId } from '@ebbline/shared/contract/water-parameters';
import type { CompiledUnit } from '../site/compiled-site';
import type { CompiledWaterParameter, WaterBand } from '../site/compiled-water';
import type { UnitEntryId } from './entry-ids';

/** Entries whose limits are an end of a parameter's band: what `limits` of the site file says of them wins over `water`. */
const entryOfEnd: Readonly<
  Partial<Record<WaterParameterId, { readonly low?: UnitEntryId; readonly high?: UnitEntryId }>>
> = {
  conductivity: { low: 'CHEM-1', high: 'CHEM-1' },
  ph: { low: 'CHEM-2', high: 'CHEM-2' },
  bacteria: { low: 'CHEM-3', high: 'CHEM-3' },
  inhibitor: { low: 'CHEM-4' },
  copper: { high: 'CHEM-4' },
  turbidity: { low: 'CHEM-5', high: 'CHEM-5' },
};

/** The band that a parameter is judged by: as the alarms of the unit have it. */
export function bandInForceOf({ limits }: CompiledUnit, { id, band }: CompiledWaterParameter): WaterBand {
  const { low, high } = entryOfEnd[id] ?? {};
  return {
    ...band,
    low: (low === undefined ? undefined : limits.get(low)?.low) ?? band.low,
    high: (high === undefined ? undefined : limits.get(high)?.limit) ?? band.high,
  };
}
