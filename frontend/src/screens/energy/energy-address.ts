import type { EnergyQuery, EnergyStep } from '@ebbline/shared/contract/energy';
import { energySteps } from '@ebbline/shared/contract/energy';
import { fromZoneLocal, toZoneLocal } from '../../text/zone-time';

/** What the Energy screen shows; its address holds all of it. */
export interface EnergyView {
  readonly hall: string | null;
  readonly unit: string | null;
  readonly by: EnergyStep;
  /** The day, month or year that is cut into hours, days or months: `2026-03-01`, `2026-03`, `2026`; null: the one that runs. */
  readonly at: string | null;
}

type Query = Readonly<Record<string, unknown>>;

const shapes: { readonly [S in EnergyStep]: RegExp } = {
  hour: /^\d{4}-\d{2}-\d{2}$/,
  day: /^\d{4}-\d{2}$/,
  month: /^\d{4}$/,
};
const lengths: { readonly [S in EnergyStep]: number } = { hour: 10, day: 7, month: 4 };

export function readEnergyAddress(query: Query): EnergyView {
  const text = (key: string): string | null => {
    const given = query[key];
    return typeof given === 'string' && given !== '' ? given : null;
  };
  const by = energySteps.find((step) => step === text('by')) ?? 'hour';
  const at = text('at');
  const unit = text('unit');
  return { unit, hall: unit === null ? text('hall') : null, by, at: at !== null && isReal(at, by) ? at : null };
}

const isReal = (at: string, by: EnergyStep): boolean => shapes[by].test(at) && !Number.isNaN(Date.parse(firstDay(at)));

export const writeEnergyAddress = ({ hall, unit, by, at }: EnergyView): Record<string, string> => ({
  ...(unit === null ? (hall === null ? {} : { hall }) : { unit }),
  ...(by === 'hour' ? {} : { by }),
  ...(at === null ? {} : { at }),
});

/** `2026-03` → `2026-03-01` */
const firstDay = (at: string): string => `${at}-01-01`.slice(0, 10);

/** The day, month or year in which a moment lies, in the site's zone. */
export const calendarAt = (iso: string, by: EnergyStep, zone: string): string =>
  toZoneLocal(iso, zone).slice(0, lengths[by]);

/** The day, month or year so many further on. */
export function moveAt(at: string, by: EnergyStep, steps: number): string {
  const day = new Date(`${firstDay(at)}T00:00:00Z`);
  if (by === 'hour') day.setUTCDate(day.getUTCDate() + steps);
  else if (by === 'day') day.setUTCMonth(day.getUTCMonth() + steps);
  else day.setUTCFullYear(day.getUTCFullYear() + steps);
  return day.toISOString().slice(0, lengths[by]);
}

/** What is asked of the server: from local midnight to local midnight, and no further than now. Null before the time in force is known. */
export function energyQuery(view: EnergyView, now: string | null, zone: string): EnergyQuery | null {
  if (now === null) return null;
  const at = view.at ?? calendarAt(now, view.by, zone);
  const [from, end] = [at, moveAt(at, view.by, 1)].map((day) => fromZoneLocal(`${firstDay(day)}T00:00`, zone));
  if (from === undefined || from === null || end === undefined || end === null) return null;
  const place = view.unit !== null ? { unit: view.unit } : view.hall !== null ? { hall: view.hall } : {};
  return { ...place, from, to: end, by: view.by };
}
