import type { EntryId } from '../entry-ids';
import { above, below, type FurtherRationale } from './further-rationale';

const noFlow = 'Off while the unit is stopped, filled or drained.';
const chips = 'Temperature at which the chips throttle.';

/** Further rationale of what is about flow, temperatures and facility water. */
export const ofFlowAndHeat = {
  'FLOW-1': {
    type: 'deviation',
    class: 'flow',
    designLimit: chips,
    timeNeededS: 180,
    stateDependent: noFlow,
    setting: below('ratio', 1),
  },
  'FLOW-2': {
    type: 'absolute',
    class: 'flow',
    designLimit: chips,
    timeNeededS: 45,
    stateDependent: `${noFlow} Only while chips are loaded.`,
    setting: below('ratio', 1),
  },
  'FLOW-3': {
    type: 'deviation',
    class: 'flow',
    designLimit: chips,
    timeNeededS: 300,
    stateDependent: noFlow,
    setting: below('ratio', 1),
  },
  'FAC-1': {
    type: 'absolute',
    class: 'heat',
    designLimit: 'Supply temperature of the class that the racks are built for.',
    timeNeededS: 45,
    stateDependent: noFlow,
    setting: below('ratio', 1),
  },
  'FAC-2': {
    type: 'deviation',
    class: 'heat',
    designLimit: 'Facility supply temperature that the exchanger is designed for.',
    timeNeededS: 300,
    stateDependent: noFlow,
    setting: above('temperatureDifference'),
  },
  'TSUP-1': {
    type: 'deviation',
    class: 'heat',
    designLimit: 'Supply temperature of the class that the racks are built for.',
    timeNeededS: 180,
    stateDependent: `${noFlow} Counts from the set point that is measured, and from that of the site file where none is; one that was never heard is awaited for a minute, or three of its periods.`,
    setting: above('temperatureDifference'),
  },
  'TSUP-2': {
    type: 'absolute',
    class: 'heat',
    designLimit: 'Supply temperature of the class that the racks are built for.',
    timeNeededS: 90,
    stateDependent: noFlow,
    setting: above('temperatureDifference'),
  },
  'VALVE-1': {
    type: 'deviation',
    class: 'machines',
    designLimit: null,
    timeNeededS: 600,
    stateDependent: 'Off while the unit is off, vented or drained.',
    setting: above('ratio', 0),
  },
  'DEW-1': {
    type: 'calculated',
    class: 'condensation',
    designLimit: 'Dew point of the hall.',
    timeNeededS: 420,
    stateDependent: null,
    setting: below('temperatureDifference'),
  },
  'DEW-2': {
    type: 'calculated',
    class: 'condensation',
    designLimit: 'Dew point of the hall.',
    timeNeededS: 120,
    stateDependent: null,
    setting: below('temperatureDifference'),
  },
  'HX-1': {
    type: 'deviation',
    class: 'wear',
    designLimit: 'Heat that the unit is rated for at the warmest facility water.',
    timeNeededS: 8 * 3600,
    stateDependent: noFlow,
    setting: below('ratio', 1),
  },
  'RTH-1': {
    type: 'deviation',
    class: 'wear',
    designLimit: chips,
    timeNeededS: 8 * 3600,
    stateDependent: noFlow,
    setting: above('ratio', 1),
  },
} as const satisfies Partial<Record<EntryId, FurtherRationale>>;
