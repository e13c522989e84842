import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { stringify } from 'yaml';
import { demoFleet } from '../../../simulator/src/scenario/demo-fleet';
import { recordTelemetry } from '../../../simulator/src/scenario/record-telemetry';
import type { ScheduledCommand } from '../../../simulator/src/scenario/schedule';
import { startBroker } from '../../helpers/broker';
import { connectPlayer } from '../../helpers/player';
import type { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { siteOfUnits } from '../../stories/site-of-units';
import { startApp, type RunningApp } from './running-app';

type Keep = ReturnType<typeof stopAfterEach>;

export const startMs = Date.UTC(2031, 4, 6, 7, 0, 0);
export const unit = 'N3';

/** The simulated units have no second pump: their controller is let tell of one that rests. */
const standbyPump = { 'pump.standbyRun': false, 'pump.standbyReady': true } as const;
function siteWithStandbyPump(): object {
  const site = siteOfUnits([unit]);
  const units = site['units'] as Record<string, { points?: object }>;
  const points = {
    'pump.standby.running': { path: 'pump.standbyRun' },
    'pump.available': { path: 'pump.standbyReady' },
  };
  const own = units[unit];
  return { ...site, units: { [unit]: { ...own, points: { ...own?.points, ...points } } } };
}

export interface Stage {
  readonly app: RunningApp;
  /** Plays the simulated plant up to so many seconds after the start; from then on with these of its values changed. */
  to(seconds: number, changed?: Readonly<Record<string, unknown>>): Promise<void>;
  /** So many seconds were played. */
  atS(): number;
  /** The program ends and starts anew on the same data folder. */
  restart(): Promise<RunningApp>;
}

/** The simulated plant of one unit before the program, through a real broker, on the source clock. */
export const stageOf =
  (keep: Keep) =>
  async (schedule: readonly ScheduledCommand[], seconds: number): Promise<Stage> => {
    const folder = keep(await temporaryFolder());
    const site = join(folder.path, 'site.yaml');
    await writeFile(site, stringify(siteWithStandbyPump(), { aliasDuplicateObjects: false }));
    const broker = keep(await startBroker());
    const variables = { EBBLINE_CLOCK: 'source', EBBLINE_MQTT_URL: broker.url, EBBLINE_SITE: site };
    const start = async (): Promise<RunningApp> => keep(await startApp({ variables, dataFolder: folder.path }));
    const app = await start();
    const heard = async (): Promise<number> => (await app.get<{ messages: number }>('/api/intake')).messages;
    const player = keep(await connectPlayer(broker, heard));
    const units = demoFleet.filter(({ id }) => id === unit);
    const telemetry = recordTelemetry({ seed: 1, startMs, units, schedule, seconds });
    let next = telemetry.next();
    let atS = 0;
    return {
      app,
      atS: () => atS,
      async to(untilS, changed = {}) {
        const messages = [];
        while (next.done !== true && next.value.sourceMs <= startMs + untilS * 1000) {
          messages.push({ ...next.value, payload: withValues(next.value.payload, changed) });
          next = telemetry.next();
        }
        await player.play(messages);
        atS = untilS;
      },
      async restart() {
        await app.stop();
        return start();
      },
    };
  };

/** The unit's payload with some of its values, by their paths, as they are told here; any other as it is. */
function withValues(payload: string, changed: Readonly<Record<string, unknown>>): string {
  if (!payload.startsWith('{')) return payload;
  const told = JSON.parse(payload) as Record<string, unknown>;
  if (told['pump'] === undefined) return payload;
  for (const [path, value] of Object.entries({ ...standbyPump, ...changed })) {
    const parts = path.split('.');
    let part: Record<string, unknown> | undefined = told;
    for (const key of parts.slice(0, -1)) part = part?.[key] as Record<string, unknown> | undefined;
    if (part !== undefined) part[parts.at(-1) ?? ''] = value;
  }
  return JSON.stringify(told);
}
