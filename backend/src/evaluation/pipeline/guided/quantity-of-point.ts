import { guidedQuantities, type GuidedQuantity } from '@ebbline/shared/contract/guided-quantity';
import { pointDefinition } from '@ebbline/shared/contract/point-table';

/** What a point measures, of those that records of tests print; anything else is told as a plain number. */
export function quantityOfPoint(point: string): GuidedQuantity {
  const quantity = pointDefinition(point)?.quantity;
  return guidedQuantities.find((one) => one === quantity) ?? 'ratio';
}
