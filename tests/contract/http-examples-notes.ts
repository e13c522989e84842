import type { RouteKey } from '@ebbline/shared/contract/route-table';
import type { Example } from './http-example';

const note = {
  id: 'n41',
  text: 'Hose of server 4 weeps at the coupling when it is moved.\nNew one is on the bench.',
  by: 'Ines',
  station: '127.0.0.1',
  writtenAt: '2031-05-06T07:08:09.250Z',
  about: '2031-05-06T06:50:00.000Z',
  hall: 'north',
  unit: 'N1',
  alarm: 'N1:AIR-1',
  corrects: null,
  why: null,
  correctedBy: null,
  withdrawn: null,
};
const withdrawn = { by: 'Omar', at: '2031-05-06T09:00:00.000Z', reason: 'it was another rack' };

const handover = {
  id: 'h52',
  hall: null,
  from: '2031-05-06T04:00:00.000Z',
  to: '2031-05-06T12:00:00.000Z',
  by: 'Ines',
  station: '127.0.0.1',
  at: '2031-05-06T11:56:00.000Z',
  takerNamed: 'Omar',
  text: 'all as on the report',
  taken: null,
};

/** Bodies of notes and handovers. */
export const noteExamples = {
  'get /api/notes': {
    query: { from: '2031-05-06T04:00:00Z', to: '2031-05-06T12:00:00Z', hall: 'north' },
    reply: {
      time: '2031-05-06T12:00:00.000Z',
      notes: [
        { ...note, correctedBy: 'n43' },
        { ...note, id: 'n43', corrects: 'n41', why: 'a slip of the pen', withdrawn },
      ],
      more: false,
    },
  },
  'post /api/notes': {
    body: { text: note.text, about: note.about, hall: null, unit: 'N1', alarm: note.alarm, operator: 'Ines' },
    reply: note,
  },
  'post /api/notes/{id}/correct': {
    body: { text: 'Hose of server 5 weeps.', reason: 'a slip of the pen', operator: 'Ines' },
    reply: { ...note, id: 'n43', text: 'Hose of server 5 weeps.', corrects: 'n41', why: 'a slip of the pen' },
  },
  'post /api/notes/{id}/withdraw': {
    body: { reason: withdrawn.reason, operator: 'Omar' },
    reply: { ...note, withdrawn },
  },
  'post /api/handovers': {
    body: {
      hall: null,
      from: handover.from,
      to: handover.to,
      takerNamed: 'Omar',
      text: handover.text,
      operator: 'Ines',
    },
    reply: handover,
  },
  'post /api/handovers/{id}/take': {
    body: { text: '', operator: 'Omar' },
    reply: {
      ...handover,
      taken: { by: 'Omar', station: '127.0.0.1', at: '2031-05-06T12:02:00.000Z', text: '' },
    },
  },
} as const satisfies Partial<Record<RouteKey, Example>>;
