import { readVersion } from '../api/health';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/** The version of the program that serves this page; another one after it was renewed. */
export const useVersion = (): Polled<string> => usePolled(readVersion, { everyMs: 60_000 });
