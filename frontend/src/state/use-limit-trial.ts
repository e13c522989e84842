import type { LimitTrial, StartTrialRequest } from '@ebbline/shared/contract/limit-trial';
import { ok } from '@ebbline/shared/errors/result';
import { cancelTrial, readTrial, startTrial } from '../api/limit-trials';
import type { OneAct } from './use-acting';
import { useActing } from './use-acting';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/** How often a trial that runs is looked at. ms */
export const trialEveryMs = 1000;

export const useStartTrial = (): OneAct<StartTrialRequest, LimitTrial> => useActing(startTrial);

export const useCancelTrial = (): OneAct<string, LimitTrial> => useActing(cancelTrial);

/** A trial by its id, looked at until it has ended; null asks for none. */
export function useLimitTrial(id: () => string | null): Polled<LimitTrial> {
  let ended: LimitTrial | null = null;
  return usePolled(
    async (of) => {
      if (ended?.id === of) return ok(ended);
      const reply = await readTrial(of);
      if (reply.ok && reply.value.state !== 'running') ended = reply.value;
      return reply;
    },
    { of: id, everyMs: trialEveryMs },
  );
}
