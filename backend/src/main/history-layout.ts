import type { CompiledSite } from '../evaluation/site/compiled-site';
import type { HistoryLayout } from '../ports/history-store';

/** The columns of each holder, in the order of its slots. */
export const historyLayout = ({ holders, slots }: CompiledSite): HistoryLayout => ({
  holders: holders.map(({ id, firstSlot, slotCount }) => ({
    id,
    columns: Array.from({ length: slotCount }, (_, i) => ({
      point: slots.pointId[firstSlot + i] ?? '',
      unitOfMeasure: slots.unitOfMeasure[firstSlot + i] ?? '1',
    })),
  })),
});
