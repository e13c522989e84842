import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { HistoryColumns, Intake } from '@ebbline/shared/contract/http-api';
import { stringify } from 'yaml';
import { startBroker } from './broker';
import { type Ebbline, startEbbline } from './ebbline';
import { plantJournalOf } from './journal-of';
import { connectPlayer, type Player } from './player';
import type { TemporaryFolder } from './temporary-folder';

/** The whole program on the source clock behind a broker of its own, and a player that feeds it. */
export interface ReplayedBackend extends Player {
  readonly ebbline: Ebbline;
  intake(): Promise<Intake>;
  /** The journal from its first row. */
  journal(): Promise<readonly JournalRow[]>;
  history(unit: string, point: string, fromMs: number, toMs: number, buckets: number): Promise<HistoryColumns>;
}

/** `site`: a site file as plain objects. `data`: a fresh data folder; removed at the end. */
export async function startReplayedBackend(site: unknown, data: TemporaryFolder): Promise<ReplayedBackend> {
  const siteFile = join(data.path, 'site.yaml');
  await writeFile(siteFile, stringify(site, { aliasDuplicateObjects: false }));
  const broker = await startBroker();
  const stopBroker = async (): Promise<void> => {
    await broker.stop();
    await data.stop();
  };
  const ebbline = await startEbbline({
    data: data.path,
    env: { EBBLINE_CLOCK: 'source', EBBLINE_MQTT_URL: broker.url, EBBLINE_SIMULATOR: 'off', EBBLINE_SITE: siteFile },
  }).catch(async (fault: unknown) => {
    await stopBroker();
    throw fault;
  });
  const intake = (): Promise<Intake> => ebbline.get<Intake>('/api/intake');
  const player = await connectPlayer(broker, async () => (await intake()).messages);
  return {
    ...player,
    ebbline,
    intake,
    journal: () => plantJournalOf(ebbline),
    history: (unit, point, fromMs, toMs, buckets) => {
      const [from, to] = [fromMs, toMs].map((ms) => new Date(ms).toISOString());
      const query = new URLSearchParams({ unit, point, from: from ?? '', to: to ?? '', buckets: String(buckets) });
      return ebbline.get<HistoryColumns>(`/api/history?${query.toString()}`);
    },
    stop: async () => {
      await player.stop();
      await ebbline.stop();
      await stopBroker();
    },
  };
}
