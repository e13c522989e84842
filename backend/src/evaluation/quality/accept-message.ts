import { decodePayload } from '../decode/decode-payload';
import { fieldAt } from '../decode/field-at';
import { findParents, plannedField } from '../decode/field-plan';
import { readValue } from '../decode/read-value';
import { readSourceTime } from '../decode/source-time';
import type { Acceptance } from '../sample/acceptance';
import { GatewayStatus, type IntakeContext } from '../sample/intake-context';
import { timeRefusal } from '../sample/judge-time';
import type { CompiledSite, PointBinding, TopicPlan } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import { keepSample, type SampleListener } from './keep-sample';

interface Message {
  readonly topic: string;
  readonly payload: Uint8Array;
  readonly retained: boolean;
}

/** Source time of a whole message; NaN where it was refused. `null`: retained, and nothing tells its age. */
function sourceTime(
  site: CompiledSite,
  context: IntakeContext,
  plan: TopicPlan,
  retained: boolean,
  arrivalMs: number,
): number | null {
  const { acceptance, decoded, clock } = context;
  if (plan.timePath === null || plan.timeForm === null) {
    if (retained) return null;
    // On the source clock the first sample of all must bring a time.
    if (Number.isNaN(arrivalMs)) acceptance.refuse('TIME_MISSING', plan.topic, null);
    return arrivalMs;
  }
  const raw = fieldAt(decoded.document, plan.timePath);
  if (raw === undefined || raw === null) {
    acceptance.refuse('TIME_MISSING', plan.topic, plan.timePath);
    return Number.NaN;
  }
  const sourceMs = readSourceTime(raw, plan.timeForm);
  const refusal = timeRefusal(site, clock, sourceMs, arrivalMs, context.wallMs);
  if (refusal === null) return sourceMs;
  acceptance.refuse(refusal, plan.topic, plan.timePath);
  return Number.NaN;
}

/** A quality that the site file promises and that is not there counts as not good. */
function isFlagged(document: unknown, { qualityPath, qualityGood }: PointBinding): boolean {
  if (qualityPath === null) return false;
  const told = fieldAt(document, qualityPath);
  for (let i = 0; i < qualityGood.length; i += 1) if (qualityGood[i] === told) return false;
  return true;
}

function takeStatus(context: IntakeContext, plan: TopicPlan): void {
  const { status } = plan;
  if (status === null) return;
  const { document } = context.decoded;
  const told = status.path === null ? document : fieldAt(document, status.path);
  context.gatewayStatus[status.gateway] = String(told) === status.online ? GatewayStatus.online : GatewayStatus.gone;
}

function takeFields(
  site: CompiledSite,
  state: SlotState,
  context: IntakeContext,
  plan: TopicPlan,
  sourceMs: number | null,
  message: Message,
  arrivalMs: number,
  onSample: SampleListener,
): void {
  const { acceptance, decoded, read, parents } = context;
  const { bindings } = plan;
  const fields = context.fields.get(plan);
  if (fields !== undefined) findParents(fields, decoded.document, parents);
  // One quality mostly serves a whole message; the site compiler gives such bindings one and the same path.
  let flagPath: PointBinding['qualityPath'] = null;
  let flagGood: PointBinding['qualityGood'] | null = null;
  let flagged = false;
  for (let i = 0; i < bindings.length; i += 1) {
    const binding = bindings[i];
    if (binding === undefined) continue;
    const raw = fields === undefined ? decoded.document : plannedField(fields, parents, i);
    let value: number;
    if (typeof raw === 'number' && binding.words === null) {
      value = raw;
    } else {
      readValue(raw, binding.words, read);
      value = read.value;
      if (read.refusal !== null) {
        const bare = plan.format === 'number' && read.refusal === 'VALUE_NOT_NUMBER';
        acceptance.refuse(bare ? 'PAYLOAD_NOT_NUMBER' : read.refusal, plan.topic, binding.path);
        continue;
      }
    }
    if (binding.qualityPath !== flagPath || binding.qualityGood !== flagGood) {
      flagPath = binding.qualityPath;
      flagGood = binding.qualityGood;
      flagged = isFlagged(decoded.document, binding);
    }
    const { slot } = binding;
    const own = value * (site.slots.factor[slot] ?? Number.NaN) + (site.slots.offset[slot] ?? Number.NaN);
    if (!Number.isFinite(own)) {
      acceptance.refuse('VALUE_NOT_FINITE', plan.topic, binding.path);
      continue;
    }
    keepSample(site, state, context, slot, own, sourceMs, arrivalMs, message.retained, flagged, onSample);
  }
}

/**
 * One message through decode, sample and quality into the slots. Never throws, whatever the bytes are; what is
 * wrong is counted in the `Acceptance`, which the next call writes again. `arrivalMs` is the tick time: on the
 * source clock the newest accepted source time, NaN before the first. `onSample` hears every sample that
 * history keeps, late ones too.
 */
export function acceptMessage(
  site: CompiledSite,
  state: SlotState,
  context: IntakeContext,
  message: Message,
  arrivalMs: number,
  onSample: SampleListener,
): Acceptance {
  const { acceptance, decoded } = context;
  acceptance.start();
  const plan = site.topics.get(message.topic);
  if (plan === undefined) {
    acceptance.refuse('TOPIC_UNKNOWN', message.topic, null);
    return acceptance;
  }
  const isJson = plan.format === 'json' || (plan.status !== null && plan.status.path !== null);
  decodePayload(message.payload, isJson ? 'json' : plan.format, site.maximumPayloadBytes, decoded);
  if (decoded.refusal !== null) {
    acceptance.refuse(decoded.refusal, message.topic, null);
    return acceptance;
  }
  if (plan.format === 'status') {
    takeStatus(context, plan);
  } else {
    const sourceMs = sourceTime(site, context, plan, message.retained, arrivalMs);
    if (!Number.isNaN(sourceMs ?? 0)) {
      takeFields(site, state, context, plan, sourceMs, message, arrivalMs, onSample);
    }
  }
  decoded.document = undefined;
  return acceptance;
}
