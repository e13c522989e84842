import { modes } from '@ebbline/shared/contract/http-api';
import { unitEntries } from '../alarm-rules/catalogue/catalogue';

/** 1 where the entry is off, by entry and mode. */
const offInMode = unitEntries.map(({ offInModes }) => Uint8Array.from(modes, (mode) => +offInModes.includes(mode)));

/** Whether an entry is off in a mode (its place in `modes`): always where the unit tells it, else only if the entry says so. */
export const isOff = (place: number, mode: number, modeTold: boolean): boolean =>
  offInMode[place]?.[mode] === 1 && (modeTold || unitEntries[place]?.offWhenInferred === true);
