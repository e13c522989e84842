import { atMost, type FigureRow } from '../figure-row';

/** Set aside, or a setting changed, and the journal names nobody who did it. */
export const unauthorised: FigureRow = {
  id: 'unauthorised',
  title: 'Alarms set aside or settings changed by nobody known',
  unit: 'times',
  source: 'ANSI/ISA-18.2-2009, IEC 62682:2014 (from memory)',
  target: atMost(0),
  of: ({ unauthorised: times, days }) => (days > 0 ? times : null),
};
