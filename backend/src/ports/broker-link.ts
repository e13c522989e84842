import type { z } from 'zod';
import type { brokerStateSchema } from '@ebbline/shared/contract/http-api';

export type BrokerState = z.infer<typeof brokerStateSchema>;

/** How the connection to the MQTT broker stands. */
export interface BrokerLink {
  state(): BrokerState;
}

export const BROKER_LINK = Symbol('BrokerLink');
