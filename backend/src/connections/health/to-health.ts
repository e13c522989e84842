import { toHealthReason, type HealthFinding } from '@ebbline/shared/contract/health-reasons';
import type { Health } from '@ebbline/shared/contract/http-api';
import type { BrokerState } from '../../ports/broker-link';
import type { HistoryHealth } from '../../ports/history-store';
import { historyReasons } from './history-reasons';

export interface HealthFacts {
  readonly clock: Health['clock'];
  readonly broker: BrokerState;
  readonly history: HistoryHealth;
  readonly lastSampleAge: number | null;
  /** Seconds since the program was ready. */
  readonly runningFor: number;
  readonly reasons: readonly HealthFinding[];
  readonly version: string;
}

/** Without any sample for so long something is wrong with the way here, s. */
const SILENCE_S = 30;
/** So long after the start the broker is still waited for, s. */
const STARTING_S = 10;

/** Reasons first, and the status from them: `starting` until the first sample, while nothing else is wrong. */
export function toHealth(facts: HealthFacts): Health {
  const reasons = [
    ...brokerReason(facts),
    ...historyReasons(facts.history),
    ...silenceReason(facts),
    ...facts.reasons,
  ].map(toHealthReason);
  return {
    status: reasons.length > 0 ? 'degraded' : facts.lastSampleAge === null ? 'starting' : 'ok',
    reasons,
    clock: facts.clock,
    broker: facts.broker,
    lastSampleAge: facts.lastSampleAge,
    version: facts.version,
  };
}

function brokerReason({ broker, runningFor }: HealthFacts): readonly HealthFinding[] {
  if (broker.state === 'connected' || (broker.state === 'connecting' && runningFor < STARTING_S)) return [];
  const why = broker.note === null ? '' : ` (${broker.note})`;
  const message = `The broker at ${broker.address} is not reached${why}; it is tried again. Check that it runs, that its address is right, and that it lets Ebbline in.`;
  return [{ code: 'BROKER_LOST', message }];
}

function silenceReason({ broker, lastSampleAge, runningFor }: HealthFacts): readonly HealthFinding[] {
  const silentFor = lastSampleAge ?? runningFor;
  return broker.state !== 'connected' || silentFor < SILENCE_S
    ? []
    : [
        {
          code: 'NO_SAMPLES',
          message: `No sample has been accepted for ${Math.floor(silentFor)} s. See /api/intake for what comes in and what is refused.`,
        },
      ];
}
