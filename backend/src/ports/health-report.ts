import type { HealthFinding } from '@ebbline/shared/contract/health-reasons';

/** What the running judge tells about itself. */
export interface RunnerHealth {
  /** Seconds since the newest accepted sample arrived; null before the first. */
  lastSampleAge(): number | null;
  /** The first tick is done and judging has not been ended. */
  isJudging(): boolean;
  reasons(): readonly HealthFinding[];
}

export const RUNNER_HEALTH = Symbol('RunnerHealth');
