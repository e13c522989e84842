import type { RawMessage } from '../evaluation/pipeline/inputs';
import type { Acceptance } from '../evaluation/sample/acceptance';

/** Takes messages, one at a time, and says what became of each. Never throws, whatever the bytes are. */
export interface MessageSink {
  accept(message: RawMessage): Acceptance;
}

export const MESSAGE_SINK = Symbol('MessageSink');
