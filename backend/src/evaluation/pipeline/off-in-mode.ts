import { modes } from '@ebbline/shared/contract/http-api';
import { unitEntries } from '../alarm-rules/catalogue/catalogue';

const rowsOf = (told: boolean): readonly Uint8Array[] =>
  modes.map((mode) =>
    Uint8Array.from(unitEntries, (entry) => +(entry.offInModes.includes(mode) && (told || entry.offWhenInferred))),
  );
const whenTold = rowsOf(true);
const whenInferred = rowsOf(false);

/**
 * 1 where an entry is off in a mode, by place in `unitEntries`: always where the unit tells it, else only if the entry says so.
 * @param mode place in `modes`
 */
export const offInMode = (mode: number, modeTold: boolean): Uint8Array =>
  (modeTold ? whenTold : whenInferred)[mode] as Uint8Array;

/** Whether one entry is off. */
export const isOff = (place: number, mode: number, modeTold: boolean): boolean =>
  offInMode(mode, modeTold)[place] === 1;
