import { decodePayload, type DecodedPayload } from '../evaluation/decode/decode-payload';
import { fieldAt } from '../evaluation/decode/field-at';
import { readValue, type ReadValue } from '../evaluation/decode/read-value';
import { readSourceTime } from '../evaluation/decode/source-time';
import type { RawMessage } from '../evaluation/pipeline/inputs';
import { timeRefusal } from '../evaluation/sample/judge-time';
import type { CompiledSite, TopicPlan } from '../evaluation/site/compiled-site';

/**
 * The source time of a message before it is accepted, ms; NaN where it tells none that would be accepted,
 * or brings no value that would. Needed on the source clock only, where time must have moved before the
 * message comes into its slots.
 * @param nowMs the time in force; NaN before the first sample
 */
export function peekSourceTime(site: CompiledSite, message: RawMessage, nowMs: number): number {
  const plan = site.topics.get(message.topic);
  if (plan === undefined || plan.format === 'status' || plan.timePath === null || plan.timeForm === null)
    return Number.NaN;
  const decoded: DecodedPayload = { document: undefined, refusal: null };
  decodePayload(message.payload, plan.format, site.maximumPayloadBytes, decoded);
  if (decoded.refusal !== null) return Number.NaN;
  const sourceMs = readSourceTime(fieldAt(decoded.document, plan.timePath), plan.timeForm);
  if (timeRefusal(site, 'source', sourceMs, nowMs) !== null) return Number.NaN;
  return bringsValue(site, plan, decoded.document) ? sourceMs : Number.NaN;
}

/** Whether at least one field would be taken; the first that would ends the search. */
function bringsValue({ slots }: CompiledSite, { bindings }: TopicPlan, document: unknown): boolean {
  const read: ReadValue = { value: Number.NaN, refusal: null };
  return bindings.some(({ slot, path, words }) => {
    readValue(fieldAt(document, path), words, read);
    return (
      read.refusal === null &&
      Number.isFinite(read.value * (slots.factor[slot] ?? Number.NaN) + (slots.offset[slot] ?? Number.NaN))
    );
  });
}
