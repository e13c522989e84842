/** What a broker keeps for whoever asks later: one message a topic. */
export interface RetainedTopics {
  /** Connects, for ever anew, and asks each time for what the broker holds under `filter`. */
  start(filter: string, hearer: RetainedHearer): void;
  /**
   * Hands a message over, to be kept and to be told, at least once (QoS 1); an empty one clears the topic. What is handed over
   * arrives in that order. False where the connection ended before the broker had it: it may or may not have come through.
   */
  put(topic: string, payload: string): Promise<boolean>;
  stop(): Promise<void>;
}

export interface RetainedHearer {
  connected(): void;
  lost(): void;
  /** The broker took the question: what it holds under the filter came before this, or is on its way. */
  asked?(): void;
  /** The broker held this already when it was asked. */
  held(topic: string, payload: string): void;
}
