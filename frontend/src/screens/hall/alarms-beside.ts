import type { CallingAlarm, HallFrame, HallPicture } from '@ebbline/shared/contract/live-feed';

/** Alarms that call and are of no single unit – of a hall, a gateway or the program – which no row of a hall could show. A past moment has none. */
export const alarmsBeside = (frame: HallPicture & Partial<Pick<HallFrame, 'calling'>>): readonly CallingAlarm[] =>
  (frame.calling?.newest ?? []).filter(({ unit }) => unit === null);
