import { atMost, isa2016, type FigureRow } from '../figure-row';

/** Gone within 60 s and before a person had seen them; those that chatter are counted there. */
export const fleetingAlarms: FigureRow = {
  id: 'fleetingAlarms',
  title: 'Alarms gone before anyone could act',
  unit: 'alarms',
  source: `${isa2016}; unseen and gone within 60 s: own assumption`,
  target: atMost(0),
  of: ({ fleeting, days }) => (days > 0 ? new Set(fleeting.map(({ alarm }) => alarm)).size : null),
};
