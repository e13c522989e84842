import { pointDefinition } from '@ebbline/shared/contract/point-table';
import type { Reading } from '@ebbline/shared/contract/reading';
import type { PrintedQuantity } from '../../text/format-quantity';
import { formatByUnit, formatPoint } from '../../text/format-quantity';

/** A reading ready to print; null where it has no value. */
export function printReading({ id, value, unit, expandedUncertainty }: Reading): PrintedQuantity | null {
  if (value === null) return null;
  return pointDefinition(id) === undefined ? formatByUnit(value, unit) : formatPoint(id, value, expandedUncertainty);
}
