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
  /** By how much the machine's clock is ahead of the time in force, ms; 0 on the source clock. */
  readonly steppedMs: number;
}

/** Why the running judge is unwell, for health. */
export function runnerReasons(pipeline: Pipeline, facts: RunnerFacts): readonly HealthFinding[] {
  const found: HealthFinding[] = [];
  if (facts.unrecorded > 0 || facts.journalTrouble !== null) {
    const message = `The journal refuses writes; ${facts.unrecorded} changes are not recorded and are tried again. Free disk space and check permissions of the data folder.`;
    found.push({ code: 'JOURNAL_FAILING', message });
  }
  const told = [
    ['HISTORY_WRITE_FAILED', 'The last rows of history were refused', facts.notWritten],
    ['HISTORY_UPKEEP_FAILED', 'Old history could not be sealed or removed', facts.notKept],
    ['MEMORY_FAILED', 'What was learnt is not kept over a restart', facts.notRemembered],
  ] as const;
  if (Math.abs(facts.steppedMs) > steppedBeyondMs) found.push(clockStepped(facts.steppedMs));
  for (const [code, what, why] of told) if (why !== null) found.push({ code, message: `${what}: ${why}` });
  return [...found, ...systemReasons(pipeline)];
}

/** Less is what clocks that are set right slowly, and a busy machine, come to. */
const steppedBeyondMs = 2000;

function clockStepped(steppedMs: number): HealthFinding {
  const by = `${(Math.abs(steppedMs) / 1000).toFixed(0)} s ${steppedMs > 0 ? 'ahead of' : 'behind'}`;
  const message = `The machine's clock is ${by} the time that Ebbline runs on: it was stepped since the start, or the machine stood still. Delays run on. Alarms, and what is reckoned from samples, bear the time of before; the age of a value by a clock set back may be told too great, and is at least the time since it was accepted.`;
  return { code: 'CLOCK_STEPPED', message };
}
