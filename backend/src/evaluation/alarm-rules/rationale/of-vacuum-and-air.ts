import type { EntryId } from '../entry-ids';
import { above, below, delaysOnly, withoutDeadband, type FurtherRationale } from './further-rationale';

const ambient = 'Ambient pressure: above it the loop lets water out.';
const carried = 'What the vacuum sources carry at their seal temperature.';
const lowerWall = 'Vapour pressure of the water, and the inlet pressure that the pump needs.';

/** Further rationale of what is about the vacuum, about air that comes in and about boiling. */
export const ofVacuumAndAir = {
  'MARGIN-1': {
    type: 'calculated',
    class: 'vacuum',
    designLimit: ambient,
    timeNeededS: 180,
    stateDependent: 'Told as vented, not as an alarm, where the loop stands vented under an open permit.',
    setting: below('pressureDifference'),
  },
  'MARGIN-2': {
    type: 'calculated',
    class: 'vacuum',
    designLimit: ambient,
    timeNeededS: 90,
    stateDependent: 'Told as vented, not as an alarm, where the loop stands vented under an open permit.',
    setting: below('pressureDifference'),
  },
  'MARGIN-3': {
    type: 'rate',
    class: 'vacuum',
    designLimit: 'The limit of MARGIN-1, towards which the margin falls.',
    timeNeededS: 1200,
    stateDependent: null,
    setting: below('duration'),
  },
  'AIR-1': {
    type: 'deviation',
    class: 'air',
    designLimit: carried,
    timeNeededS: 180,
    stateDependent: 'Moved by what an open permit expects, and in modes that move water or gas on purpose.',
    setting: withoutDeadband(above('freeAirFlow', 0)),
  },
  'AIR-2': {
    type: 'deviation',
    class: 'air',
    designLimit: 'Oxygen that the water may take up, and the reserve of the vacuum sources.',
    timeNeededS: 7200,
    stateDependent: 'Moved by what open permits expect and by gas that a fill has left.',
    setting: above('freeAirFlow', 0),
  },
  'AIR-3': {
    type: 'calculated',
    class: 'air',
    designLimit: 'One open hose of this site.',
    timeNeededS: 600,
    stateDependent: null,
    setting: below('ratio'),
  },
  'AIR-4': {
    type: 'rate',
    class: 'air',
    designLimit: carried,
    timeNeededS: 45,
    stateDependent: null,
    setting: above('pressureDifference', 0),
  },
  'BOIL-1': {
    type: 'calculated',
    class: 'flow',
    designLimit: lowerWall,
    timeNeededS: 150,
    stateDependent: null,
    setting: below('pressureDifference'),
  },
  'BOIL-2': {
    type: 'calculated',
    class: 'flow',
    designLimit: lowerWall,
    timeNeededS: 45,
    stateDependent: null,
    setting: below('pressureDifference'),
  },
  'VENT-1': {
    type: 'discrete',
    class: 'vacuum',
    designLimit: 'The pressure that a refill against a shut bleed builds up.',
    timeNeededS: 90,
    stateDependent: null,
    setting: above('ratio', 0),
  },
  'PERMIT-1': {
    type: 'deviation',
    class: 'work',
    designLimit: carried,
    timeNeededS: 300,
    stateDependent: 'Exists only while a permit is open, and counts from what it expects.',
    setting: above('freeAirFlow', 0),
  },
  'ISOL-1': {
    type: 'discrete',
    class: 'work',
    designLimit: 'Ambient pressure, which trapped water passes as it warms.',
    timeNeededS: 360,
    stateDependent: 'Only of a branch that is isolated.',
    setting: delaysOnly,
  },
} as const satisfies Partial<Record<EntryId, FurtherRationale>>;
