/**
 * Acknowledgements to the broker that wait until what they acknowledge is committed. Messages are
 * counted in the order in which they came; releasing a count releases all before it.
 */
export interface DeliveryGate {
  /** Acknowledgements held back now. */
  waiting(): number;
  /** How many were held back since the start, the released ones included: a mark to release later. */
  mark(): number;
  /** All up to `mark` are committed: let them go. */
  release(mark: number): void;
}

export const DELIVERY_GATE = Symbol('DeliveryGate');
