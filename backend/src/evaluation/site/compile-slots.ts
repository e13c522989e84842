import { pointDefinition, splitPoint } from '@ebbline/shared/contract/point-table';
import type { MeasuredPoint } from './compile-holder';
import { Origin, Reference, type Holder, type SlotTable } from './compiled-site';
import type { PartIds } from './unit-parts';

/** A holder with the points that get a slot: measured ones first, then those that people type, then derived ones, contiguous. */
export interface HolderPlan {
  readonly id: string;
  readonly kind: 'hall' | 'unit';
  readonly measured: readonly MeasuredPoint[];
  /** Points that people type. */
  readonly byHand?: readonly string[];
  readonly derived: readonly string[];
  readonly places: readonly string[];
}

/** Derived points have no sensor: no range, no period, nothing to be stuck. */
const derivedRow = {
  factor: 1,
  offset: 0,
  reference: Reference.none as number,
  minimum: Number.NEGATIVE_INFINITY,
  maximum: Number.POSITIVE_INFINITY,
  jumpPerS: Number.POSITIVE_INFINITY,
  periodMs: 1000,
  stuckMs: Number.POSITIVE_INFINITY,
  accuracyAbsolute: Number.NaN,
  accuracyRelative: Number.NaN,
  accuracyNormalAbsolute: Number.NaN,
  accuracyNormalRelative: Number.NaN,
};

export function compileSlots(plans: readonly HolderPlan[]): {
  readonly holders: readonly Holder[];
  readonly slots: SlotTable;
} {
  const count = plans.reduce(
    (sum, plan) => sum + plan.measured.length + (plan.byHand?.length ?? 0) + plan.derived.length,
    0,
  );
  const pointId: string[] = [];
  const unitOfMeasure: string[] = [];
  const table: SlotTable = {
    count,
    pointId,
    unitOfMeasure,
    holder: new Int32Array(count),
    measured: new Uint8Array(count),
    factor: new Float64Array(count),
    offset: new Float64Array(count),
    reference: new Uint8Array(count),
    minimum: new Float64Array(count),
    maximum: new Float64Array(count),
    jumpPerS: new Float64Array(count),
    periodMs: new Float64Array(count),
    stuckMs: new Float64Array(count),
    accuracyAbsolute: new Float64Array(count),
    accuracyRelative: new Float64Array(count),
    accuracyNormalAbsolute: new Float64Array(count),
    accuracyNormalRelative: new Float64Array(count),
  };
  const put = (holder: number, id: string, unit: string, origin: number, row: typeof derivedRow): void => {
    const slot = pointId.length;
    pointId.push(id);
    unitOfMeasure.push(unit);
    table.holder[slot] = holder;
    table.measured[slot] = origin;
    table.factor[slot] = row.factor;
    table.offset[slot] = row.offset;
    table.reference[slot] = row.reference;
    table.minimum[slot] = row.minimum;
    table.maximum[slot] = row.maximum;
    table.jumpPerS[slot] = row.jumpPerS;
    table.periodMs[slot] = row.periodMs;
    table.stuckMs[slot] = row.stuckMs;
    table.accuracyAbsolute[slot] = row.accuracyAbsolute;
    table.accuracyRelative[slot] = row.accuracyRelative;
    table.accuracyNormalAbsolute[slot] = row.accuracyNormalAbsolute;
    table.accuracyNormalRelative[slot] = row.accuracyNormalRelative;
  };
  const units = new Map<string, string>();
  const unitOf = (id: string): string => {
    const unit = units.get(id) ?? pointDefinition(id)?.unit ?? '1';
    units.set(id, unit);
    return unit;
  };
  const holders = plans.map((plan, holder): Holder => {
    const firstSlot = pointId.length;
    for (const { point } of plan.measured) put(holder, point.id, point.definition.unit, Origin.measured, point);
    for (const id of plan.byHand ?? []) put(holder, id, unitOf(id), Origin.byHand, derivedRow);
    for (const id of plan.derived) put(holder, id, unitOf(id), Origin.derived, derivedRow);
    const slotOf = new Map<string, number>();
    for (let slot = firstSlot; slot < pointId.length; slot += 1) slotOf.set(pointId[slot] ?? '', slot);
    return {
      id: plan.id,
      kind: plan.kind,
      firstSlot,
      slotCount: pointId.length - firstSlot,
      slotOf,
      places: plan.places,
    };
  });
  return { holders, slots: table };
}

/** `branch.<id>.heatRemoved` → one for each branch. */
export const expandDerived = (ids: readonly string[], parts: PartIds): readonly string[] =>
  ids.flatMap((id) => {
    const part = splitPoint(id);
    return part?.id === '<id>' ? parts[part.group].map((one) => id.replace('<id>', one)) : [id];
  });
