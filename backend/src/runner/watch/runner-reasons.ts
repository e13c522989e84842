import type { HealthFinding } from '@ebbline/shared/contract/health-reasons';
import type { Pipeline } from '../../evaluation/pipeline/pipeline';
import { systemReasons } from './system-reasons';

export interface RunnerFacts {
  /** Changes that the journal has not taken yet. */
  readonly unrecorded: number;
  /** Why it refused its last write; null where it did not. */
  readonly journalTrouble: string | null;
  readonly notWritten: string | null;
  readonly notKept: string | null;
  readonly notRemembered: string | null;
}

/** Why the running judge is unwell, for health. */
export function runnerReasons(pipeline: Pipeline, facts: RunnerFacts): readonly HealthFinding[] {
  const found: HealthFinding[] = [];
  if (facts.unrecorded > 0 || facts.journalTrouble !== null) {
    const why = facts.journalTrouble === null ? '' : ` (${facts.journalTrouble})`;
    const message = `The journal refuses writes${why}; ${facts.unrecorded} changes are not recorded and are tried again. Free disk space and check permissions of the data folder.`;
    found.push({ code: 'JOURNAL_FAILING', message });
  }
  const told = [
    ['HISTORY_WRITE_FAILED', 'The last rows of history were refused', facts.notWritten],
    ['HISTORY_UPKEEP_FAILED', 'Old history could not be sealed or removed', facts.notKept],
    ['MEMORY_FAILED', 'What was learnt is not kept over a restart', facts.notRemembered],
  ] as const;
  for (const [code, what, why] of told) if (why !== null) found.push({ code, message: `${what}: ${why}` });
  return [...found, ...systemReasons(pipeline)];
}
