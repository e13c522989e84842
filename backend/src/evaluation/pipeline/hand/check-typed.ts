import { parseQuantity, writtenUnit, writtenUnitsFor } from '@ebbline/shared/contract/site-file-quantity';
import { waterParameters } from '@ebbline/shared/contract/water-parameters';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { conductivityAt25 } from '@ebbline/shared/fluid-properties/conductivity';
import { celsius } from '@ebbline/shared/units/quantity';
import { asMolybdenum } from '../../site/as-molybdenum';
import type { CompiledUnit } from '../../site/compiled-site';
import type { CompiledWaterParameter } from '../../site/compiled-water';
import type { CorrectByHand, EnterByHand, HandFault } from '../hand-record';

/** A sample older than this says nothing of the water of today, and is not taken back after a restart. */
export const oldestSampleMs = 400 * 86_400_000;
/** Clocks of people and programs differ by so much. */
const aheadMs = 60_000;

const refuse = (code: HandFault['code'], message: string): { readonly ok: false; readonly fault: HandFault } =>
  fail({ code, message });

/** A typed value as the program keeps it, or why it is refused. */
export function checkTyped(
  action: EnterByHand | CorrectByHand,
  { water }: CompiledUnit,
  { id }: CompiledWaterParameter,
  nowMs: number,
): Result<number, HandFault> {
  const { title, quantity, least, most } = waterParameters[id];
  const { as, sampleTemperature, takenMs, unitOfMeasure, value } = action;
  if (!(takenMs <= nowMs + aheadMs))
    return refuse('HAND_ENTRY_TIME', 'the sample was taken in the future; correct the date or the time');
  if (!(takenMs >= nowMs - oldestSampleMs))
    return refuse('HAND_ENTRY_TIME', 'the sample is more than 400 days old; correct the date');
  if (writtenUnit(unitOfMeasure, quantity) === undefined || (id === 'ph' && unitOfMeasure !== '1'))
    return refuse(
      'HAND_ENTRY_UNIT_OF_MEASURE',
      `"${unitOfMeasure}" is no unit of measure of ${title}; give it in ${id === 'ph' ? '1' : writtenUnitsFor(quantity).join(', ')}`,
    );
  if ((as !== null) !== (id === 'molybdate'))
    return refuse(
      'HAND_ENTRY_FORM',
      id === 'molybdate'
        ? 'say as what molybdate is counted, Mo or MoO4: the numbers differ by 1.67'
        : 'Mo or MoO4 goes with molybdate only; take it out',
    );
  if (sampleTemperature !== null && id !== 'conductivity')
    return refuse('HAND_ENTRY_FORM', 'a sample temperature goes with conductivity only; take it out');
  const parsed = parseQuantity(`${value} ${unitOfMeasure}`, quantity);
  const si = parsed.ok ? asMolybdenum(id, parsed.value, as) : Number.NaN;
  const kept =
    sampleTemperature === null ? si : conductivityAt25(si, celsius(sampleTemperature), water.conductivityCoefficient);
  if (!(kept >= least && kept <= most))
    return refuse(
      'HAND_ENTRY_RANGE',
      `${value} ${unitOfMeasure} is outside what ${title} can be; look at the number and at the unit of measure`,
    );
  return ok(kept);
}
