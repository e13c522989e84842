import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { startBroker } from '../../helpers/broker';
import { type Ebbline, launchEbbline, startEbbline } from '../../helpers/ebbline';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { dataFolder } from '../data-folder';
import { writeSite } from '../row-of-units';
import { startFastPlant } from './fast-plant';
import { expectAlarmsOfJournal, expectEachOnce } from './nothing-lost';
import { ownMounts, readOnly, turnReadOnly, turnWritable } from './own-mounts';

const units = 2;
const keep = stopAfterEach();

/** By name, what every file of a folder holds. */
const contentOf = (folder: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => !name.startsWith('build') && statSync(join(folder, name)).isFile())
      .map((name) => [
        name,
        createHash('sha256')
          .update(readFileSync(join(folder, name)))
          .digest('hex'),
      ]),
  );

async function place() {
  const broker = keep(await startBroker());
  const data = keep(await dataFolder());
  const files = keep(await temporaryFolder());
  const env = {
    EBBLINE_SITE: await writeSite(files.path, units),
    EBBLINE_MQTT_URL: broker.url,
    EBBLINE_SIMULATOR: 'off',
    EBBLINE_CLOCK: 'source',
  };
  const plant = keep(await startFastPlant(broker, units, Date.UTC(2026, 0, 5, 6)));
  return { data: data.path, env, plant };
}

const hoursIn = (data: string): number => readdirSync(join(data, 'history/seconds')).length;
const codesOf = async (ebbline: Ebbline): Promise<readonly string[]> =>
  (await ebbline.health()).reasons.map(({ code }) => code);

suiteNeeding(['mounts'], 'a data folder that can only be read', () => {
  test('refuses the start with a message that names it, and is left as it was', async () => {
    const { data, env, plant } = await place();
    const first = keep(await startEbbline({ data, env }));
    await plant.stretch();
    await plant.expectLatestKept(first, 1);
    await first.stop();
    const before = contentOf(data);

    const second = keep(launchEbbline({ data, env, under: readOnly(data) }));
    expect(await second.exit).toBe(1);
    expect(second.output()).toContain(data);
    expect(second.output()).toMatch(/can't be written|is writable/);
    expect(contentOf(data)).toEqual(before);
  });

  test('at work is told in health; alarms go on, and what waited is sealed once it may be written to', async () => {
    const { data, env, plant } = await place();
    const ebbline = keep(await startEbbline({ data, env, under: ownMounts }));
    await plant.stretch();
    await plant.expectLatestKept(ebbline, 1);
    await turnReadOnly(ebbline.pid, data);
    const before = hoursIn(data);
    const told = async () => {
      await plant.stretch();
      return (await codesOf(ebbline)).includes('HISTORY_UPKEEP_FAILED');
    };
    await until(told, { everyMs: 500, what: 'history that can not be sealed' });
    expect((await ebbline.health()).status).toBe('degraded');
    expect(hoursIn(data)).toBe(before);
    expect((await ebbline.alarms()).map(({ entry }) => entry)).toContain('WATER-1');

    await turnWritable(ebbline.pid, data);
    const mended = async () => {
      await plant.stretch();
      return !(await codesOf(ebbline)).some((code) => /^(JOURNAL|HISTORY)_/.test(code));
    };
    await until(mended, { everyMs: 500, what: 'health without history' });
    expect(hoursIn(data)).toBeGreaterThan(before);
    await plant.expectLatestKept(ebbline, 4);
    expectEachOnce(await expectAlarmsOfJournal(ebbline), []);
  });
});
