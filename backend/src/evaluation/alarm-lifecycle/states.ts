import type { AlarmState } from '@ebbline/shared/contract/alarm';

/**
 * The states of ANSI/ISA-18.2-2016 and IEC 62682, as two facts that are kept apart: whether the condition holds (after
 * delays and deadband), and whether a person has said "seen". Shelved, suppressed by design and out of service are a
 * dimension of their own: `mode-table.ts`.
 */
export interface StateFacts {
  /** The condition holds. Acknowledging never changes it. */
  readonly active: boolean;
  readonly acknowledged: boolean;
  /** The condition has gone, the alarm stays until a person resets it. */
  readonly latched: boolean;
  /** In the list of standing alarms. */
  readonly standing: boolean;
}

const facts = (active: boolean, acknowledged: boolean, latched: boolean, standing: boolean): StateFacts => ({
  active,
  acknowledged,
  latched,
  standing,
});

export const stateFacts: Readonly<Record<AlarmState, StateFacts>> = {
  //                            active acknowledged latched standing
  normal: facts(false, true, false, false),
  unacknowledged: facts(true, false, false, true),
  acknowledged: facts(true, true, false, true),
  returnedUnacknowledged: facts(false, false, false, true),
  latchedUnacknowledged: facts(false, false, true, true),
  latchedAcknowledged: facts(false, true, true, true),
};
