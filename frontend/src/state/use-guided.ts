import type {
  CancelGuidedRequest,
  ConfirmGuidedRequest,
  GuidedList,
  GuidedSurvey,
  GuidedTest,
  StartGuidedRequest,
} from '@ebbline/shared/contract/guided-test';
import {
  cancelGuidedTest,
  confirmGuidedStep,
  readGuidedSurvey,
  readGuidedTest,
  readGuidedTests,
  startGuidedTest,
} from '../api/guided-tests';
import type { OneAct } from './use-acting';
import { useActing } from './use-acting';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/** A test that goes on is looked at all the while; all units only now and then. ms */
export const guidedEveryMs = 2000;
const surveyEveryMs = 5000;

export const useGuidedSurvey = (): Polled<GuidedSurvey> =>
  usePolled(() => readGuidedSurvey(), { everyMs: surveyEveryMs });

/** What a unit could have; null asks nothing. */
export const useGuidedTests = (unit: () => string | null): Polled<GuidedList> =>
  usePolled(readGuidedTests, { of: unit, everyMs: guidedEveryMs });

/** One test; null asks nothing. */
export const useGuidedTest = (unit: () => string, test: () => string | null): Polled<GuidedTest> =>
  usePolled(readGuidedTestOf(unit), { of: test, everyMs: guidedEveryMs });

const readGuidedTestOf =
  (unit: () => string) =>
  (test: string): ReturnType<typeof readGuidedTest> =>
    readGuidedTest(unit(), test);

export const useStartGuided = (unit: () => string): OneAct<StartGuidedRequest, GuidedTest> =>
  useActing((wish: StartGuidedRequest) => startGuidedTest(unit(), wish));

export const useConfirmGuided = (unit: () => string, test: () => string): OneAct<ConfirmGuidedRequest, GuidedTest> =>
  useActing((wish: ConfirmGuidedRequest) => confirmGuidedStep(unit(), test(), wish));

export const useCancelGuided = (unit: () => string, test: () => string): OneAct<CancelGuidedRequest, GuidedTest> =>
  useActing((wish: CancelGuidedRequest) => cancelGuidedTest(unit(), test(), wish));
