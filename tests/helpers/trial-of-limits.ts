import type { LimitTrial, StartTrialRequest } from '@ebbline/shared/contract/limit-trial';
import type { CompiledSite } from '../../backend/src/evaluation/site/compiled-site';
import { RunnerTrialDesk, type TrialDeskParts } from '../../backend/src/runner/trial-desk/trial-desk';
import type { HistoryInMemory } from './history-in-memory';

/** A desk over a history in memory, whose thread is never let go of. */
export const deskOver = (
  site: CompiledSite,
  store: HistoryInMemory,
  parts: Partial<TrialDeskParts> = {},
): RunnerTrialDesk =>
  new RunnerTrialDesk({
    site: () => site,
    store,
    nowMs: () => Number.NaN,
    monotonicMs: () => 0,
    report: (fault) => {
      throw fault;
    },
    ...parts,
  });

/** Starts a trial, and waits until it has ended. */
export async function tried(desk: RunnerTrialDesk, request: StartTrialRequest): Promise<LimitTrial> {
  const started = desk.start(request);
  if (!started.ok) throw new Error(started.fault.message);
  for (;;) {
    const found = desk.find(started.value.id);
    if (!found.ok) throw new Error(found.fault.message);
    if (found.value.state !== 'running') return found.value;
    await Promise.resolve();
  }
}
