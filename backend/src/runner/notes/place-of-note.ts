import type { Note } from '@ebbline/shared/contract/notes';
import type { Failure, Result } from '@ebbline/shared/errors/result';
import { fail, ok } from '@ebbline/shared/errors/result';

/** Which units stand in which halls. */
export interface PlacesOfSite {
  readonly halls: readonly { readonly id: string }[];
  readonly units: readonly { readonly id: string; readonly hall: number }[];
}

export interface Place {
  readonly hall: string | null;
  readonly unit: string | null;
}

/** Where a note belongs: with a unit goes its hall. */
export function placeOf(
  { halls, units }: PlacesOfSite,
  { hall, unit }: Place,
): Result<Place, Failure<'HALL_UNKNOWN' | 'UNIT_UNKNOWN'>> {
  if (hall !== null && !halls.some(({ id }) => id === hall)) return fail(noHall);
  if (unit === null) return ok({ hall, unit });
  const found = units.find(({ id }) => id === unit);
  const itsHall = found === undefined ? undefined : halls[found.hall]?.id;
  return itsHall === undefined || (hall !== null && hall !== itsHall) ? fail(noUnit) : ok({ hall: itsHall, unit });
}

/** Whether a note concerns a place: what is said of the whole concerns its parts, and a hall is concerned by its units. */
export const isOfPlace = (note: Pick<Note, 'hall' | 'unit'>, { hall, unit }: Place): boolean =>
  (hall === null || note.hall === null || note.hall === hall) &&
  (unit === null || note.unit === null || note.unit === unit);

const noHall = { code: 'HALL_UNKNOWN', message: 'The site has no hall of this id; /api/site lists them.' } as const;
const noUnit = {
  code: 'UNIT_UNKNOWN',
  message: 'The site has no unit of this id, or not in this hall; /api/units lists them.',
} as const;
