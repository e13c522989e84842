import { appendFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import type { SiteState } from '@ebbline/shared/contract/site-state';
import { startBroker } from '../../helpers/broker';
import { startEbbline } from '../../helpers/ebbline';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { keepDoing, startSender, writeSite } from '../row-of-units';
import { fillDisk, onSmallDisk } from './own-mounts';

const units = 8;
const keep = stopAfterEach();

suiteNeeding(['mounts'], 'a program whose disk is full', () => {
  test('refuses another site file, and ends all the same, with the word how many rows are lost', async () => {
    const broker = keep(await startBroker());
    const data = keep(await temporaryFolder());
    const files = keep(await temporaryFolder());
    const siteFile = await writeSite(files.path, units);
    const env = { EBBLINE_SITE: siteFile, EBBLINE_MQTT_URL: broker.url, EBBLINE_SIMULATOR: 'off' };
    const ebbline = keep(await startEbbline({ data: data.path, env, under: onSmallDisk(data.path, 64) }));
    const sender = keep(await startSender(broker.url, units));
    keep(keepDoing(() => sender.sendAll(), 300));

    // Signed in while that can still be recorded.
    const before = await ebbline.get<SiteState>('/api/site/state');
    fillDisk(ebbline.pid, data.path);
    const isTold = async () => (await ebbline.health()).reasons.some(({ code }) => code === 'HISTORY_FAILING');
    await until(isTold, { everyMs: 200, what: 'history that can not be written' });
    await appendFile(siteFile, '\n# another content\n');
    const refused = await until(
      async () => {
        const now = await ebbline.get<SiteState>('/api/site/state');
        return now.refused === null ? null : now;
      },
      { everyMs: 200, what: 'the refusal' },
    );
    expect(refused.contentHash).toBe(before.contentHash);
    expect(refused.refused?.faults[0]?.message).toContain('HISTORY_NOT_WRITTEN');

    process.kill(ebbline.pid, 'SIGTERM');
    await until(() => /History: \d+ rows could not be written before the end/.test(ebbline.output()), {
      everyMs: 200,
      what: 'the last word on history',
    });
    expect(await ebbline.exit).not.toBeNull();
  });
});
