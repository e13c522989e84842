import type { PointList } from '@ebbline/shared/contract/http-api';
import type { AlertList } from '@ebbline/shared/contract/alert';
import type { Reading } from '@ebbline/shared/contract/reading';
import type { ReplayedBackend } from '../helpers/replayed-backend';
import type { Seen } from './story';
import type { LoopWatch } from './watch-loops';

/** Asks the program for everything that a story may look at. */
export async function look(
  backend: ReplayedBackend,
  watch: LoopWatch,
  units: readonly string[],
  atS: number,
): Promise<Seen> {
  const [alarms, { alerts }, journal, lists] = await Promise.all([
    backend.ebbline.alarms(),
    backend.ebbline.get<AlertList>('/api/alerts'),
    backend.journal(),
    Promise.all(units.map((unit) => backend.ebbline.get<PointList>(`/api/units/${unit}/points`))),
  ]);
  const readings = new Map<string, Reading>(
    lists.flatMap(({ unit, points }) => points.map((reading) => [`${unit} ${reading.id}`, reading] as const)),
  );
  return {
    atS,
    alarms,
    alerts,
    journal,
    reading: (unit, point) => readings.get(`${unit} ${point}`),
    loop: (unit) => watch.frame(unit),
  };
}

/** What stands, for the message of a story that went wrong. */
export const toldShortly = ({ alarms, alerts }: Seen): string =>
  [
    ...alarms.map(({ id, state, where, foldedUnder, detail }) =>
      [id, state, where, foldedUnder && `under ${foldedUnder}`, detail].filter(Boolean).join(', '),
    ),
    ...alerts.map(({ id, where, detail }) => ['alert', id, where, detail].filter(Boolean).join(' ')),
  ].join('\n');
