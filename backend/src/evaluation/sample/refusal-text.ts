import { maximumJsonDepth } from '../decode/json-depth';
import type { CompiledSite } from '../site/compiled-site';
import type { RefusalCode } from './acceptance';

const what: Readonly<Record<RefusalCode, (site: CompiledSite) => string>> = {
  TOPIC_UNKNOWN: () => 'no point of the site file is found there; add one or unsubscribe',
  PAYLOAD_TOO_LARGE: (site) =>
    `the payload is longer than ${site.maximumPayloadBytes} bytes; send less or raise intake.maximumPayloadBytes`,
  PAYLOAD_EMPTY: () => 'the payload is empty; send a value',
  PAYLOAD_NOT_UTF8: () => 'the payload is not UTF-8; check the sender (compressed? binary?)',
  PAYLOAD_NOT_NUMBER: () => 'a bare decimal number is expected; check the sender, or give `path` for JSON',
  PAYLOAD_NOT_JSON: () => 'JSON is expected; check the sender, or take `path` out for a bare number',
  PAYLOAD_NOT_OBJECT: () => 'a JSON object is expected, not a list or a single value; check the sender',
  PAYLOAD_TOO_DEEP: () => `the JSON is nested deeper than ${maximumJsonDepth}; check the sender`,
  FIELD_MISSING: () => 'the field is missing or null; check `path` in the site file and the sender',
  VALUE_NOT_NUMBER: () => 'a number is expected; check `path` in the site file and the sender',
  VALUE_NOT_FINITE: () => 'the number is not finite; check the sender',
  VALUE_WORD_UNKNOWN: () => 'this word has no meaning; add it to `words` in the site file',
  TIME_MISSING: () => 'the source time is missing; check `time.path` in the site file and the sender',
  TIME_MALFORMED: () => 'the source time is not written as `time.form` says; check the site file and the sender',
  TIME_FUTURE: () => "the source time lies in the future; set the sender's clock",
  TIME_TOO_OLD: () => "the source time lies too far back; set the sender's clock, or raise intake.oldestSample",
};

const shown = (text: string): string => (text.length > 120 ? `${text.slice(0, 120)}…` : text);

/** What, where, what to do; never the payload. `field` is the path of a field, or null for the whole message. */
export function refusalText(
  code: RefusalCode,
  site: CompiledSite,
  topic: string,
  field: readonly string[] | null,
): string {
  const where = field === null || field.length === 0 ? shown(topic) : `${shown(topic)}, ${shown(field.join('.'))}`;
  return `${where}: ${what[code](site)}`;
}
