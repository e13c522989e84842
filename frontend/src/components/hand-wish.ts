import type { HandEntryRequest, HandMethod, MolybdateForm } from '@ebbline/shared/contract/hand-entry';
import type { WaterParameterId } from '@ebbline/shared/contract/water-parameters';
import { fromZoneLocal } from '../text/zone-time';

/** What a form for a value by hand holds, as typed. */
export interface HandForm {
  readonly parameter: WaterParameterId;
  readonly value: number | '';
  readonly unit: string;
  readonly as: MolybdateForm;
  readonly sampleTemperature: number | '';
  readonly takenAt: string;
  /** Empty: not said. */
  readonly method: HandMethod | '';
  readonly note: string;
}

/** The wish behind a filled form, without the name of the person; null while something in it can't be meant. */
export function handWish(form: HandForm, zone: string): Omit<HandEntryRequest, 'operator'> | null {
  const takenAt = fromZoneLocal(form.takenAt, zone);
  if (typeof form.value !== 'number' || !Number.isFinite(form.value) || takenAt === null || form.unit === '')
    return null;
  const warm = form.parameter === 'conductivity' && typeof form.sampleTemperature === 'number';
  return {
    parameter: form.parameter,
    value: form.value,
    unit: form.unit,
    as: form.parameter === 'molybdate' ? form.as : null,
    sampleTemperature: warm && typeof form.sampleTemperature === 'number' ? form.sampleTemperature : null,
    takenAt,
    method: form.method === '' ? null : form.method,
    note: form.note.trim(),
  };
}
