import type { LastPayload } from '@ebbline/shared/contract/setup';
import type { RawMessage } from '../../evaluation/pipeline/inputs';
import type { Acceptance } from '../../evaluation/sample/acceptance';

/** So many topics are watched at a time; whoever asks for one more lets go the one that was asked for longest ago. */
const TOPICS_WATCHED = 50;
/** A topic that nobody has asked for so long is let go, ms. */
const WATCHED_FOR_MS = 600_000;
const TEXT_BYTES = 4096;
const HEX_BYTES = 256;

interface Watched {
  askedMs: number;
  last: LastPayload;
}

/** The newest payload of the topics that somebody looks at. Costs nothing for all others, and never more than 50 payloads. */
export class WatchedPayloads {
  private readonly topics = new Map<string, Watched>();

  /** The newest payload since the topic was first asked for. */
  ask(topic: string, wallMs: number): LastPayload {
    this.letGo(wallMs);
    const known = this.topics.get(topic);
    this.topics.delete(topic);
    const watched = known ?? { askedMs: wallMs, last: nothingYet(topic) };
    watched.askedMs = wallMs;
    if (this.topics.size >= TOPICS_WATCHED) {
      const oldest = this.topics.keys().next().value;
      if (oldest !== undefined) this.topics.delete(oldest);
    }
    this.topics.set(topic, watched);
    return watched.last;
  }

  see({ topic, payload }: RawMessage, { refusal }: Acceptance, wallMs: number): void {
    if (this.topics.size === 0) return;
    const watched = this.topics.get(topic);
    if (watched === undefined) return;
    const start = payload.subarray(0, TEXT_BYTES);
    const text = asText(start);
    watched.last = {
      topic,
      receivedAt: new Date(wallMs).toISOString(),
      bytes: payload.length,
      text,
      hex: text === null ? Buffer.from(payload.subarray(0, HEX_BYTES)).toString('hex') : null,
      cut: payload.length > (text === null ? HEX_BYTES : TEXT_BYTES),
      refusal: refusal === null ? null : { code: refusal.code, message: refusal.message },
    };
  }

  private letGo(wallMs: number): void {
    for (const [topic, { askedMs }] of this.topics) if (wallMs - askedMs > WATCHED_FOR_MS) this.topics.delete(topic);
  }
}

const nothingYet = (topic: string): LastPayload => ({
  topic,
  receivedAt: null,
  bytes: 0,
  text: null,
  hex: null,
  cut: false,
  refusal: null,
});

/** Null where the bytes are no UTF-8; a character that the cut has halved is left out. */
function asText(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: bytes.length === TEXT_BYTES });
  } catch {
    return null; // not text: shown as hexadecimal digits
  }
}
