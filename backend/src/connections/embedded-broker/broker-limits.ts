/**
 * How much the embedded broker holds for others. It stands in our own process: whatever it keeps for a client
 * that misbehaves is memory that the judge has not.
 */
export interface BrokerLimits {
  /** A longer packet is not waited for: its sender is disconnected before it is held. */
  readonly packetBytes: number;
  readonly clients: number;
  /** Of these, how many may not have said yet who they are: in all, and of one station (`networkOf`). */
  readonly waiting: number;
  readonly waitingOfStation: number;
  readonly subscriptionsOfClient: number;
  /** Further retained messages are handed on, but not kept. */
  readonly retainedTopics: number;
  readonly retainedBytes: number;
  /** What may wait for a client that does not take it; then it is disconnected. */
  readonly unsentBytes: number;
  /** Messages of QoS 2 that a client may have under way. */
  readonly exactlyOnceUnderWay: number;
}

/** Far above what a site on one machine needs, far below what would hurt. */
const usual: Omit<BrokerLimits, 'packetBytes'> = {
  clients: 200,
  // After a loss of power all gateways of a hall come at once, maybe from behind one address: the others come a second later.
  waiting: 100,
  waitingOfStation: 50,
  subscriptionsOfClient: 1000,
  retainedTopics: 10_000,
  retainedBytes: 16 * 1_048_576,
  unsentBytes: 4 * 1_048_576,
  exactlyOnceUnderWay: 50,
};

const SMALLEST_PACKET_LIMIT = 1_048_576;

/**
 * Packets may be four times as long as the longest payload that the site takes: what is a little too long is
 * still refused with a code and an example, where it can be read.
 */
export const brokerLimits = (longestPayloadBytes: number): BrokerLimits => ({
  ...usual,
  packetBytes: Math.max(SMALLEST_PACKET_LIMIT, 4 * longestPayloadBytes),
});
