import { geopotentialAltitude, standardPressure } from '@ebbline/shared/fluid-properties/standard-atmosphere';
import { metre } from '@ebbline/shared/units/quantity';
import type { DecodedPayload } from '../decode/decode-payload';
import { planFields, type FieldPlan } from '../decode/field-plan';
import type { ReadValue } from '../decode/read-value';
import type { CompiledSite, TopicPlan } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import { AcceptanceCount } from './acceptance-count';
import type { SampleView } from './sample-view';

/** wall: source times are judged against the arrival. source: the newest source time is the time. */
export type ClockKind = 'wall' | 'source';

export const GatewayStatus = { unknown: 0, online: 1, gone: 2 } as const;

/** What intake remembers beside the slots, and the objects that it writes again for each message. */
export interface IntakeContext {
  readonly clock: ClockKind;
  /** What the machine's clock says at this arrival. */
  wallMs: number;
  readonly acceptance: AcceptanceCount;
  readonly decoded: DecodedPayload;
  readonly read: ReadValue;
  readonly sample: SampleView;
  /** Of topics with JSON. */
  readonly fields: ReadonlyMap<TopicPlan, FieldPlan>;
  /** The objects of the newest message that its values stand in. */
  readonly parents: unknown[];
  /** Newest number of each slot in SI in its own reference, before ambient is added; NaN before the first. */
  readonly ownValue: Float64Array;
  /** Slot of the barometer of each slot's hall; −1 where it has none. */
  readonly barometerSlot: Int32Array;
  /** Standard atmosphere at the site's altitude (ISO 2533), Pa. */
  readonly standardAmbientPa: number;
  /** `GatewayStatus` by gateway, as its status topic (or its last will) tells it. */
  readonly gatewayStatus: Uint8Array;
}

export function createIntakeContext(site: CompiledSite, state: SlotState, clock: ClockKind): IntakeContext {
  const { count, holder } = site.slots;
  const ofHolder = new Int32Array(site.holders.length).fill(-1);
  for (const hall of site.halls) {
    ofHolder[hall.holder] = hall.slot.ambientPressure;
    for (const unit of hall.units) {
      const index = site.units[unit]?.holder;
      if (index !== undefined) ofHolder[index] = hall.slot.ambientPressure;
    }
  }
  return {
    clock,
    wallMs: Number.NaN,
    acceptance: new AcceptanceCount(site),
    decoded: { document: undefined, refusal: null },
    read: { value: Number.NaN, refusal: null },
    sample: {
      site,
      state,
      slot: -1,
      own: Number.NaN,
      ownBefore: Number.NaN,
      value: Number.NaN,
      sourceMs: Number.NaN,
      tickMs: Number.NaN,
      flagged: false,
    },
    fields: new Map(
      [...site.topics.values()].filter(({ format }) => format === 'json').map((plan) => [plan, planFields(plan)]),
    ),
    parents: [],
    ownValue: new Float64Array(count).fill(Number.NaN),
    barometerSlot: Int32Array.from(holder, (index) => ofHolder[index] ?? -1),
    standardAmbientPa: standardPressure(geopotentialAltitude(metre(site.altitudeM))),
    gatewayStatus: new Uint8Array(site.gateways.length),
  };
}
