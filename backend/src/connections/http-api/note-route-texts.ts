import type { noteRoutes } from '@ebbline/shared/contract/note-routes';

type Row = (typeof noteRoutes)[number];
type Key = Row extends infer R ? (R extends Row ? `${R['method']} ${R['path']}` : never) : never;

/** What each route of notes and handovers is for, in one line. */
export const noteRouteTexts: Readonly<Record<Key, { readonly operationId: string; readonly summary: string }>> = {
  'get /api/notes': {
    operationId: 'notes',
    summary: 'What people wrote down about a period, corrected and withdrawn notes among them.',
  },
  'post /api/notes': {
    operationId: 'writeNote',
    summary: 'Takes down a note under the name that is signed in; confirmed once it is committed.',
  },
  'post /api/notes/{id}/correct': {
    operationId: 'correctNote',
    summary: 'Puts another text in the place of a note; the first one stays on record.',
  },
  'post /api/notes/{id}/withdraw': {
    operationId: 'withdrawNote',
    summary: 'Takes a note back and says why. It stays on record.',
  },
  'post /api/handovers': {
    operationId: 'handOver',
    summary: 'Records that the one who is signed in hands a shift over, and to whom.',
  },
  'post /api/handovers/{id}/take': {
    operationId: 'takeOver',
    summary: 'Records that the one who is signed in takes a shift over.',
  },
};
