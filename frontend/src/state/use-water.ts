import type {
  HandCorrectionRequest,
  HandEntry,
  HandEntryList,
  HandEntryRequest,
} from '@ebbline/shared/contract/hand-entry';
import type { WaterQuality } from '@ebbline/shared/contract/water-quality';
import { correctHandEntry, enterByHand, readHandEntries, readWater } from '../api/water';
import type { OneAct } from './use-acting';
import { useActing } from './use-acting';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/** Water changes slowly; that a sample has become due is to be seen within this. ms */
export const waterEveryMs = 10_000;

export const useWater = (unit: () => string): Polled<WaterQuality> =>
  usePolled(readWater, { of: unit, everyMs: waterEveryMs });

export const useHandEntries = (unit: () => string): Polled<HandEntryList> =>
  usePolled(readHandEntries, { of: unit, everyMs: waterEveryMs });

/** What a person wants written down: a new value, or one in place of an entry that was wrong. */
export type HandWish =
  | { readonly corrects: null; readonly wish: HandEntryRequest }
  | { readonly corrects: string; readonly wish: HandCorrectionRequest };

export const useHandEntry = (unit: () => string): OneAct<HandWish, HandEntry> =>
  useActing((asked: HandWish) =>
    asked.corrects === null ? enterByHand(unit(), asked.wish) : correctHandEntry(unit(), asked.corrects, asked.wish),
  );
