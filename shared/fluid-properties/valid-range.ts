import { fail, ok, type Failure, type Result } from '../errors/result';

/** Where an equation holds. Outside it the plain functions of this room give NaN, never an extrapolation. */
export interface ValidRange {
  readonly equation: string;
  readonly quantity: string;
  readonly unit: string;
  readonly minimum: number;
  readonly maximum: number;
}

export type RangeFault = Failure<'FLUID_OUT_OF_RANGE'>;

/**
 * The same function with a coded refusal in place of NaN, for the edge where a person must be told why.
 * It allocates: not for the hot path.
 */
export function withRangeCheck<Input extends number, Output extends number>(
  range: ValidRange,
  property: (input: Input) => Output,
): (input: Input) => Result<Output, RangeFault> {
  return (input) =>
    input >= range.minimum && input <= range.maximum
      ? ok(property(input))
      : fail({
          code: 'FLUID_OUT_OF_RANGE',
          message: `${range.quantity} ${input} ${range.unit} is outside ${range.minimum} … ${range.maximum} ${range.unit}, where ${range.equation} holds; check the sensor or the site file`,
        });
}
