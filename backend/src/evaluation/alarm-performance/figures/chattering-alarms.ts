import { atMost, isa2016, type FigureRow } from '../figure-row';

/** Three or more annunciations of one alarm within 60 s. */
export const chatteringAlarms: FigureRow = {
  id: 'chatteringAlarms',
  title: 'Alarms that chatter',
  unit: 'alarms',
  source: `${isa2016}; three within 60 s: common practice, no source`,
  target: atMost(0),
  of: ({ bursts, days }) => (days > 0 ? new Set(bursts.map(({ alarm }) => alarm)).size : null),
};
