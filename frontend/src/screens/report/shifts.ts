import { fromZoneLocal, toZoneLocal } from '../../text/zone-time';

export interface Shift {
  /** ISO 8601, UTC; half-open. */
  readonly from: string;
  readonly to: string;
  /** null: no shift of the site, but a period that was typed. */
  readonly name: string | null;
}

/** Hours of the site's clock at which shifts begin (common practice, no source); any other period can be typed. */
const begins = [
  ['06', 'early shift'],
  ['14', 'late shift'],
  ['22', 'night shift'],
] as const;

const dayMs = 86_400_000;

/** Begins of shifts from the day before a moment to the day after, in order. Days of the calendar: not all have 24 hours. */
function beginsAround(iso: string, zone: string): { readonly at: string; readonly name: string }[] {
  const today = Date.parse(`${toZoneLocal(iso, zone).slice(0, 10)}T00:00:00Z`);
  return [-1, 0, 1].flatMap((days) => {
    const day = new Date(today + days * dayMs).toISOString().slice(0, 10);
    return begins.flatMap(([hour, name]) => {
      const at = fromZoneLocal(`${day}T${hour}:00`, zone);
      return at === null ? [] : [{ at, name }];
    });
  });
}

/** The shift that a moment is in. A night of a change of clocks has 7 or 9 hours. */
export function shiftAt(iso: string, zone: string): Shift {
  const all = beginsAround(iso, zone);
  const place = all.filter(({ at }) => Date.parse(at) <= Date.parse(iso)).length - 1;
  const [first, next] = [all[place], all[place + 1]];
  if (first === undefined || next === undefined) throw new RangeError(`no shift around ${iso}`);
  return { from: first.at, to: next.at, name: first.name };
}

/** A period by its ends; named where it is a shift. */
export function periodOf(from: string, to: string, zone: string): Shift {
  const shift = shiftAt(from, zone);
  const same = Date.parse(shift.from) === Date.parse(from) && Date.parse(shift.to) === Date.parse(to);
  return { from, to, name: same ? shift.name : null };
}

/** The shift before or after a period. */
export const nextShift = ({ from, to }: Shift, way: -1 | 1, zone: string): Shift =>
  shiftAt(way === 1 ? to : new Date(Date.parse(from) - 1).toISOString(), zone);
