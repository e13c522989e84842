import type {
  HandCorrectionRequest,
  HandEntry,
  HandEntryList,
  HandEntryRequest,
  HandWithdrawalRequest,
} from '@ebbline/shared/contract/hand-entry';
import type { WaterQuality } from '@ebbline/shared/contract/water-quality';
import { correctHandEntry, enterByHand, readHandEntries, readWater, withdrawHandEntry } from '../api/water';
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

/** What a person wants written down: a new value, one in place of an entry that was wrong, or that nothing takes its place. */
export type HandWish =
  | { readonly does: 'enter'; readonly wish: HandEntryRequest }
  | { readonly does: 'correct'; readonly entry: string; readonly wish: HandCorrectionRequest }
  | { readonly does: 'withdraw'; readonly entry: string; readonly wish: HandWithdrawalRequest };

export const useHandEntry = (unit: () => string): OneAct<HandWish, HandEntry> =>
  useActing((asked: HandWish) => {
    switch (asked.does) {
      case 'enter':
        return enterByHand(unit(), asked.wish);
      case 'correct':
        return correctHandEntry(unit(), asked.entry, asked.wish);
      case 'withdraw':
        return withdrawHandEntry(unit(), asked.entry, asked.wish);
    }
  });
