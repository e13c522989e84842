import type { HealthFinding } from '@ebbline/shared/contract/health-reasons';
import type { BrokerState } from '../../ports/broker-link';

export interface ReadyFacts {
  readonly broker: BrokerState['state'];
  readonly isJudging: boolean;
}

/**
 * What is still missing before the plant is judged; empty once it is. Stores are open and a site is in force before
 * anything is served. A broker that is lost is known: the judge then tells what is silent, and health is degraded.
 */
export function notReadyReasons({ broker, isJudging }: ReadyFacts): readonly HealthFinding[] {
  const reasons: HealthFinding[] = [];
  if (broker === 'connecting') {
    const message = 'The broker has not answered yet. Wait some seconds; /api/health says when it is not reached.';
    reasons.push({ code: 'BROKER_AWAITED', message });
  }
  if (!isJudging) {
    const message = 'The plant is not judged: the program starts or ends. Wait, or start Ebbline anew.';
    reasons.push({ code: 'NOT_JUDGING', message });
  }
  return reasons;
}
