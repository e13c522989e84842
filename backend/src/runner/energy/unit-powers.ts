import { energyPoints, energyQuantities, type EnergyQuantity } from '@ebbline/shared/contract/energy';
import { expanded } from '@ebbline/shared/uncertainty/combine';
import { uncertaintyOfReading } from '../../evaluation/derive/standard-uncertainty';
import type { CompiledSite, Holder } from '../../evaluation/site/compiled-site';
import type { HistoryBuckets, HistoryStore } from '../../ports/history-store';
import type { PowerSeries, UnitPowers } from './add-unit';

/** Which energies a unit has. */
export const quantitiesOf = (holder: Holder): readonly EnergyQuantity[] =>
  energyQuantities.filter((quantity) => holder.slotOf.has(energyPoints[quantity]));

/** Means of a unit's powers from history, in equal pieces of [fromMs, toMs). */
export async function readPowers(
  store: Pick<HistoryStore, 'read'>,
  site: CompiledSite,
  holder: Holder,
  span: { readonly fromMs: number; readonly toMs: number; readonly pieceMs: number },
): Promise<UnitPowers> {
  const { fromMs, toMs, pieceMs } = span;
  const read = async (id: string): Promise<HistoryBuckets | null> => {
    const slot = holder.slotOf.get(id);
    if (slot === undefined) return null;
    const unitOfMeasure = site.slots.unitOfMeasure[slot] ?? '1';
    const buckets = Math.round((toMs - fromMs) / pieceMs);
    return store.read({ holder: holder.id, point: id, unitOfMeasure, fromMs, toMs, buckets });
  };
  const found = await Promise.all(
    quantitiesOf(holder).map(async (quantity) => {
      const series = await seriesOf(site, holder, energyPoints[quantity], read);
      return series === null ? [] : [[quantity, series] as const];
    }),
  );
  return Object.fromEntries(found.flat());
}

async function seriesOf(
  site: CompiledSite,
  holder: Holder,
  point: string,
  read: (id: string) => Promise<HistoryBuckets | null>,
): Promise<PowerSeries | null> {
  const slot = holder.slotOf.get(point) ?? -1;
  const isMeasured = site.slots.measured[slot] === 1;
  const [buckets, kept] = await Promise.all([read(point), isMeasured ? null : read(`${point}Uncertainty`)]);
  if (buckets === null) return null;
  return {
    buckets,
    secondsPerValue: isMeasured ? secondsPerValue(site, slot) : 1,
    uncertainty: isMeasured
      ? (piece) => expanded(uncertaintyOfReading(site.slots, slot, buckets.mean[piece] ?? Number.NaN))
      : (piece) => kept?.mean[piece] ?? Number.NaN,
  };
}

const secondsPerValue = ({ slots }: CompiledSite, slot: number): number =>
  Math.max(1, (slots.periodMs[slot] ?? 1000) / 1000);

const carriedOn = 'beyond its piece';

/** All of the site file that a unit's sums depend on beside history, as text: sums of another text are added up anew. */
export const recipeOf = (site: CompiledSite, holder: Holder): string =>
  JSON.stringify([
    site.timeZone,
    ...quantitiesOf(holder).map((quantity) => {
      const slot = holder.slotOf.get(energyPoints[quantity]) ?? -1;
      const { slots } = site;
      const told = [slots.accuracyAbsolute, slots.accuracyRelative, slots.accuracyNormalAbsolute];
      const accuracy = [...told, slots.accuracyNormalRelative].map((column) => String(column[slot]));
      const isMeasured = slots.measured[slot] === 1;
      const uncertainty = holder.slotOf.has(`${energyPoints[quantity]}Uncertainty`);
      const periodS = secondsPerValue(site, slot);
      // Sums of slow sensors that were kept while a value stood for nothing beyond its piece have another text.
      const measured = periodS > 1 ? [periodS, accuracy, carriedOn] : [periodS, accuracy];
      return [quantity, slots.unitOfMeasure[slot], isMeasured ? measured : uncertainty];
    }),
  ]);
