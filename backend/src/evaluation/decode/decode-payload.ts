import type { RefusalCode } from '../sample/acceptance';
import type { TopicPlan } from '../site/compiled-site';
import { isDeeperThan, maximumJsonDepth } from './json-depth';
import { decodeUtf8 } from './utf8';

/** What a payload holds: the document, or why it is refused. One object, written again for each message. */
export interface DecodedPayload {
  /** An object for JSON, the trimmed text for a bare number or a status; undefined where refused. */
  document: unknown;
  refusal: RefusalCode | null;
}

function refuse(into: DecodedPayload, code: RefusalCode): void {
  into.document = undefined;
  into.refusal = code;
}

function decodeJson(bytes: Uint8Array, text: string, into: DecodedPayload): void {
  if (isDeeperThan(bytes, text, maximumJsonDepth)) {
    refuse(into, 'PAYLOAD_TOO_DEEP');
    return;
  }
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    refuse(into, 'PAYLOAD_NOT_JSON');
    return;
  }
  if (typeof document !== 'object' || document === null || Array.isArray(document)) {
    refuse(into, 'PAYLOAD_NOT_OBJECT');
    return;
  }
  into.document = document;
  into.refusal = null;
}

/** Size first, so that nothing is built from what is too large; then text, depth and shape. Never throws. */
export function decodePayload(
  bytes: Uint8Array,
  format: TopicPlan['format'],
  maximumBytes: number,
  into: DecodedPayload,
): void {
  if (bytes.length > maximumBytes) {
    refuse(into, 'PAYLOAD_TOO_LARGE');
    return;
  }
  if (bytes.length === 0) {
    refuse(into, 'PAYLOAD_EMPTY');
    return;
  }
  const text = decodeUtf8(bytes);
  if (text === null) {
    refuse(into, 'PAYLOAD_NOT_UTF8');
  } else if (format === 'json') {
    decodeJson(bytes, text, into);
  } else {
    into.document = text.trim();
    into.refusal = into.document === '' ? 'PAYLOAD_EMPTY' : null;
  }
}
