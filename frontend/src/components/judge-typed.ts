import { parseQuantity } from '@ebbline/shared/contract/site-file-quantity';
import type { MolybdateForm } from '@ebbline/shared/contract/hand-entry';
import { waterParameters } from '@ebbline/shared/contract/water-parameters';
import type { WaterBand } from '@ebbline/shared/contract/water-quality';
import type { HandForm } from './hand-wish';

/** impossible: nothing can be so, and the server refuses it; outside: it can be, but stands outside the site's band. */
export type TypedVerdict = 'impossible' | 'outside' | 'nothingToSay';

/** The band of the site for what is typed. */
export interface TypedBand {
  readonly band: WaterBand | null;
  /** Molybdate: as what the band is counted. */
  readonly bandAs: MolybdateForm | null;
}

/** What a person should know of a typed value before it is sent. */
export function judgeTyped(form: HandForm, { band, bandAs }: TypedBand): TypedVerdict {
  const { quantity, least, most } = waterParameters[form.parameter];
  if (typeof form.value !== 'number') return 'nothingToSay';
  const parsed = parseQuantity(`${form.value} ${form.unit}`, quantity);
  if (!parsed.ok) return 'nothingToSay';
  const value: number = parsed.value;
  // What a sample read at its own temperature is at 25 °C, the server works out; that nothing is below nought stands.
  const atOtherTemperature = form.parameter === 'conductivity' && typeof form.sampleTemperature === 'number';
  if (value < least || (value > most && !atOtherTemperature)) return 'impossible';
  const otherForm = form.parameter === 'molybdate' && form.as !== bandAs;
  if (band === null || atOtherTemperature || otherForm) return 'nothingToSay';
  return value < (band.low ?? -Infinity) || value > (band.high ?? Infinity) ? 'outside' : 'nothingToSay';
}
