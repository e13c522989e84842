import { derivedOfHall, derivedOfUnit } from './derived-points';
import { measuredOfHall, measuredOfUnit } from './measured-points';
import type { PointRow, QuantityKind } from './quantity-kind';

export type { QuantityKind } from './quantity-kind';

/**
 * Every point that Ebbline knows. The id is a contract: it is never renamed and never given another
 * unit of measure. `<id>` stands for the id of a wetted node, branch, server, plate or tank, `<analyte>` for a water parameter.
 * Units of measure are UCUM codes (ucum.org), SI or °C; gas flows are free air at 20 °C and 101.325 kPa.
 */
export interface PointDefinition {
  readonly id: string;
  readonly kind: 'measured' | 'derived';
  /** UCUM code; '1' for a ratio, a count or a yes/no (0 or 1). */
  readonly unit: string;
  readonly quantity: QuantityKind;
  readonly holder: 'unit' | 'hall';
  readonly title: string;
}

const define =
  (kind: PointDefinition['kind'], holder: PointDefinition['holder']) =>
  ([id, quantity, unit, title]: PointRow): PointDefinition => ({ id, kind, unit, quantity, holder, title });

export const pointTable: readonly PointDefinition[] = [
  ...measuredOfUnit.map(define('measured', 'unit')),
  ...measuredOfHall.map(define('measured', 'hall')),
  ...derivedOfHall.map(define('derived', 'hall')),
  ...derivedOfUnit.map(define('derived', 'unit')),
];

const byId = new Map(pointTable.map((definition) => [definition.id, definition]));

/** Groups of parts that a unit may have many of; a point of one is `<group>.<id>.<what>`. */
export const partGroups = ['node', 'branch', 'server', 'plate', 'tank'] as const;
export type PartGroup = (typeof partGroups)[number];

const partOfPoint = new RegExp(`^(${partGroups.join('|')})\\.([^.]+)\\.(.+)$`);

/** `branch.r5.flow` → group branch, id r5, rest flow; null for a point without a part of its own. */
export function splitPoint(
  id: string,
): { readonly group: PartGroup; readonly id: string; readonly rest: string } | null {
  const [, group, part, rest] = partOfPoint.exec(id) ?? [];
  const known = partGroups.find((one) => one === group);
  return known === undefined || part === undefined || rest === undefined ? null : { group: known, id: part, rest };
}

/** `branch.r5.flow` → `branch.<id>.flow`; ids without a part of their own come back unchanged. */
export function pointPattern(id: string): string {
  const parts = splitPoint(id);
  return parts === null ? id : `${parts.group}.<id>.${parts.rest}`;
}

/** The definition behind a point id, or undefined where Ebbline knows no such point. */
export function pointDefinition(id: string): PointDefinition | undefined {
  return byId.get(pointPattern(id));
}
