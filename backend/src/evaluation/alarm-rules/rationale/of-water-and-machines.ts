import type { EntryId } from '../entry-ids';
import { above, below, delaysOnly, within, withoutDeadband, type FurtherRationale } from './further-rationale';

const noFlow = 'Off while the unit is stopped, filled or drained.';
const treated = 'What the metals and hoses of the loop bear, by the makers of the racks and the water treater.';
const byParameters = 'The bands of the site file (`water`) stand in place of the limit.';

const ofBand = (quantity: Parameters<typeof within>[0]): FurtherRationale => ({
  type: 'absolute',
  class: 'waterQuality',
  designLimit: treated,
  timeNeededS: 4 * 3600,
  stateDependent: byParameters,
  setting: within(quantity),
});

/** Further rationale of what is about water, its levels and quality, and about machines. */
export const ofWaterAndMachines = {
  'WATER-1': {
    type: 'discrete',
    class: 'water',
    designLimit: 'No water near live equipment.',
    timeNeededS: 45,
    stateDependent: null,
    setting: delaysOnly,
  },
  'TANK-1': {
    type: 'calculated',
    class: 'levels',
    designLimit: 'An empty supply tank.',
    timeNeededS: 300,
    stateDependent: 'Off while the unit is off, vented or drained, and in a pressure-rise test.',
    setting: below('duration'),
  },
  'TANK-2': {
    type: 'absolute',
    class: 'levels',
    designLimit: 'The inlet of the vacuum source.',
    timeNeededS: 480,
    stateDependent: 'A level that an opening pushes up is told as air.',
    setting: above('ratio', 0),
  },
  'TANK-3': {
    type: 'absolute',
    class: 'levels',
    designLimit: 'The level below which the pump draws gas.',
    timeNeededS: 900,
    stateDependent: 'Off while the unit is off, vented, filled or drained, and in a pressure-rise test.',
    setting: below('ratio', 1),
  },
  'TANK-4': {
    type: 'rate',
    class: 'levels',
    designLimit: 'The room of the tanks, and the inhibitor that facility water thins.',
    timeNeededS: 3600,
    stateDependent: null,
    setting: withoutDeadband(above('volume', 0)),
  },
  'PUMP-1': {
    type: 'discrete',
    class: 'machines',
    designLimit: 'An empty supply tank.',
    timeNeededS: 120,
    stateDependent: `${noFlow} The time to respond follows from the water that is left.`,
    setting: delaysOnly,
  },
  'VSRC-1': {
    type: 'discrete',
    class: 'machines',
    designLimit: 'Ambient pressure, towards which a loop without a source rises.',
    timeNeededS: 150,
    stateDependent: 'Off where no vacuum is wanted.',
    setting: delaysOnly,
  },
  'VSRC-2': {
    type: 'discrete',
    class: 'machines',
    designLimit: null,
    timeNeededS: 3600,
    stateDependent: 'A standby that was taken in hand counts as started by a person.',
    setting: delaysOnly,
  },
  'PUMP-2': {
    type: 'absolute',
    class: 'machines',
    designLimit: null,
    timeNeededS: 2 * 3600,
    stateDependent: null,
    setting: above('duration', 0),
  },
  'PUMP-3': {
    type: 'deviation',
    class: 'wear',
    designLimit: 'Head and flow that the loop needs.',
    timeNeededS: 8 * 3600,
    stateDependent: noFlow,
    setting: above('ratio', 0),
  },
  'XFER-1': {
    type: 'deviation',
    class: 'machines',
    designLimit: 'Water that one tank holds.',
    timeNeededS: 180,
    stateDependent: noFlow,
    setting: withoutDeadband(above('ratio', 1)),
  },
  'FIL-1': {
    type: 'calculated',
    class: 'wear',
    designLimit: 'Pressure drop that the element is rated for.',
    timeNeededS: 2 * 3600,
    stateDependent: noFlow,
    setting: above('ratio', 1),
  },
  'FIL-2': {
    type: 'calculated',
    class: 'wear',
    designLimit: 'Pressure drop that the element is rated for.',
    timeNeededS: 600,
    stateDependent: noFlow,
    setting: above('ratio', 1),
  },
  'CHEM-1': ofBand('conductivity'),
  'CHEM-2': ofBand('ph'),
  'CHEM-3': ofBand('bacteria'),
  // Inhibitor below its low end, or copper above the limit.
  'CHEM-4': { ...ofBand('concentration'), setting: within('concentration', 'ends') },
  'CHEM-5': ofBand('turbidity'),
  'CHEM-6': { ...ofBand('ratio'), setting: delaysOnly },
  'CHEM-7': {
    type: 'discrete',
    class: 'waterQuality',
    designLimit: null,
    timeNeededS: 4 * 3600,
    stateDependent: 'The interval of the site file, by parameter.',
    setting: delaysOnly,
  },
} as const satisfies Partial<Record<EntryId, FurtherRationale>>;
