import type { Mapping, TriedLines } from '@ebbline/shared/contract/mapping';
import { listenFor, readMapping, stopListening, tryLines } from '../api/mapping';
import type { OneAct } from './use-acting';
import { useActing } from './use-acting';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/** What was heard under strange names. @param unit to propose for; empty: any; null asks nothing */
export const useMapping = (unit: () => string | null): Polled<Mapping> =>
  usePolled(readMapping, { of: unit, everyMs: 5000 });

/** Begins to listen to a filter; null ends it. */
export const useListening = (): OneAct<string | null, Mapping> =>
  useActing((filter) => (filter === null ? stopListening() : listenFor(filter)));

/** Tries lines with the site file in force. */
export const useTryLines = (): OneAct<string, TriedLines> => useActing(tryLines);
