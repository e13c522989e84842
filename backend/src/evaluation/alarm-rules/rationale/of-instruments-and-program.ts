import type { EntryId } from '../entry-ids';
import { above, delaysOnly, fixed, type FurtherRationale } from './further-rationale';

const steady = 'Off while the unit is stopped, filled, drained or starting.';

/** Further rationale of what is about instruments, about what changed, and about the program itself. */
export const ofInstrumentsAndProgram = {
  'INS-1': {
    type: 'instrument',
    class: 'instruments',
    designLimit: null,
    timeNeededS: 1200,
    stateDependent: null,
    setting: fixed,
  },
  'INS-2': {
    type: 'instrument',
    class: 'instruments',
    designLimit: 'A gauge sensor whose vent is open follows the air at once.',
    timeNeededS: 2 * 3600,
    stateDependent: steady,
    setting: above('ratio', 0),
  },
  'INS-3': {
    type: 'instrument',
    class: 'instruments',
    designLimit: 'Heat flows from the chips into the water.',
    timeNeededS: 1800,
    stateDependent: steady,
    setting: above('ratio', 0),
  },
  'INS-4': {
    type: 'instrument',
    class: 'instruments',
    designLimit: 'No water leaves an exchanger beyond what comes in on the other side.',
    timeNeededS: 2 * 3600,
    stateDependent: steady,
    setting: delaysOnly,
  },
  'COM-1': {
    type: 'instrument',
    class: 'instruments',
    designLimit: null,
    timeNeededS: 180,
    stateDependent: null,
    setting: fixed,
  },
  'AMB-1': {
    type: 'instrument',
    class: 'instruments',
    designLimit: null,
    timeNeededS: 3600,
    stateDependent: null,
    setting: above('pressureDifference', 0),
  },
  'BAL-1': {
    type: 'calculated',
    class: 'instruments',
    designLimit: 'Energy is conserved.',
    timeNeededS: 8 * 3600,
    stateDependent: steady,
    setting: above('ratio', 0),
  },
  'SET-1': {
    type: 'discrete',
    class: 'work',
    designLimit: null,
    timeNeededS: 600,
    stateDependent: null,
    setting: delaysOnly,
  },
  'CHANGE-1': {
    type: 'calculated',
    class: 'wear',
    designLimit: null,
    timeNeededS: 8 * 3600,
    stateDependent: steady,
    setting: above('ratio', 0),
  },
  'CHANGE-2': {
    type: 'calculated',
    class: 'wear',
    designLimit: null,
    timeNeededS: 8 * 3600,
    stateDependent: steady,
    setting: above('ratio', 0),
  },
  'SYS-1': ofProgram(120),
  'SYS-2': ofProgram(300),
  'SYS-3': ofProgram(900),
  'SYS-4': ofProgram(1800),
  'SYS-5': ofProgram(420),
} as const satisfies Partial<Record<EntryId, FurtherRationale>>;

function ofProgram(timeNeededS: number): FurtherRationale {
  return { type: 'calculated', class: 'program', designLimit: null, timeNeededS, stateDependent: null, setting: fixed };
}
