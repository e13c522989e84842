import type {
  EndTightnessRequest,
  StartTightnessRequest,
  TightnessList,
  TightnessTest,
} from '@ebbline/shared/contract/tightness-test';
import { endTightnessTest, readTightnessTest, readTightnessTests, startTightnessTest } from '../api/tightness-tests';
import type { OneAct } from './use-acting';
import { useActing } from './use-acting';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/** A test that runs is looked at all the while. ms */
export const tightnessEveryMs = 2000;

export const useTightnessTests = (unit: () => string): Polled<TightnessList> =>
  usePolled(readTightnessTests, { of: unit, everyMs: tightnessEveryMs });

/** One test, for its record. */
export const useTightnessTest = (unit: () => string, test: () => string): Polled<TightnessTest> =>
  usePolled(() => readTightnessTest(unit(), test()), { of: () => `${unit()} ${test()}`, everyMs: tightnessEveryMs });

export const useStartTightness = (unit: () => string): OneAct<StartTightnessRequest, TightnessTest> =>
  useActing((wish: StartTightnessRequest) => startTightnessTest(unit(), wish));

export const useEndTightness = (
  unit: () => string,
): OneAct<{ readonly test: string; readonly wish: EndTightnessRequest }, TightnessTest> =>
  useActing(({ test, wish }: { readonly test: string; readonly wish: EndTightnessRequest }) =>
    endTightnessTest(unit(), test, wish),
  );
