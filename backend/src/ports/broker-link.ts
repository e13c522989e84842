import type { BrokerState } from '@ebbline/shared/contract/http-api';

export type { BrokerState };

/** How the connection to the MQTT broker stands. */
export interface BrokerLink {
  state(): BrokerState;
}

export const BROKER_LINK = Symbol('BrokerLink');
