import type { HistoryColumns, Intake } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { startBroker } from '../../helpers/broker';
import { addressIn, ebblineEnvironment, type Ebbline, projectRoot, startEbbline } from '../../helpers/ebbline';
import { startInfluxd } from '../../helpers/influxd';
import { processTree } from '../../helpers/process-tree';
import { suiteNeeding } from '../../helpers/requirements';
import { startProcess } from '../../helpers/server-process';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { smallSiteFile } from '../app/running-app';
import { connectSender } from '../app/telemetry';
import { cuttableLink } from '../mqtt-intake/cuttable-link';
import { builtDataFolder } from './built-data-folder';

const keep = stopAfterEach();
const withinMs = 600_000;

/** One bucket a second. */
const flowOfM1 = (ebbline: Ebbline, fromMs: number, seconds: number): Promise<HistoryColumns> => {
  const query = new URLSearchParams({
    unit: 'm1',
    point: 'loop.flow',
    from: new Date(fromMs).toISOString(),
    to: new Date(fromMs + seconds * 1000).toISOString(),
    buckets: `${seconds}`,
  });
  return ebbline.get(`/api/history?${query.toString()}`);
};

const taken = async (ebbline: Ebbline): Promise<number> => (await ebbline.get<Intake>('/api/intake')).messages;

const isThere = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
};

describe('npm start', () => {
  // npm hands SIGTERM on to the shell that it started, and that shell not always to the program (seen with npm 11 and dash).
  it('ends with its simulator where npm alone is sent SIGTERM', { timeout: withinMs }, async () => {
    const data = keep(await builtDataFolder());
    const npm = startProcess('npm', ['start'], {
      cwd: projectRoot,
      env: ebblineEnvironment({ data: data.path }),
      ownGroup: true,
    });
    const address = until(() => addressIn(npm.output()), { withinMs: 150_000, everyMs: 50, what: 'the address' });
    await Promise.race([address, npm.ended]);
    const processes = processTree(npm.pid);
    keep({ stop: () => processes.filter(isThere).forEach((pid) => process.kill(pid, 'SIGKILL')) });
    expect(processes.length).toBeGreaterThanOrEqual(3);
    process.kill(npm.pid, 'SIGTERM');
    await until(() => !processes.some(isThere), { everyMs: 50, what: 'every process to end' });
  });
});

describe('the demo that is stopped in order and started again', () => {
  it('tells of no lost gateway: its own absence is none', { timeout: withinMs }, async () => {
    const data = keep(await builtDataFolder());
    const first = keep(await startEbbline({ data: data.path }));
    await until(async () => (await taken(first)) > 100, { what: 'telemetry' });
    first.child.kill('SIGTERM');
    await first.exit;
    const second = keep(await startEbbline({ data: data.path }));
    await until(async () => (await taken(second)) > 100, { what: 'telemetry after the restart' });
    expect((await second.alarms()).filter(({ entry }) => entry === 'COM-1')).toEqual([]);
  });
});

// MQTT 3.1.1 and 5.0, section 4.4: what was not acknowledged is delivered again when the session goes on.
describe('a program killed among messages of QoS 1', () => {
  const seconds = 300;

  it.for([1, 60, 150])(
    'after %i of them has every one in history once it runs again',
    { timeout: withinMs },
    async (killAfter) => {
      const data = keep(await builtDataFolder());
      const broker = keep(await startBroker());
      const env = { EBBLINE_SITE: smallSiteFile, EBBLINE_MQTT_URL: broker.url, EBBLINE_SIMULATOR: 'off' };
      const first = keep(await startEbbline({ data: data.path, env }));
      const sender = keep(await connectSender(broker.url));
      // Signed in beforehand, so that the kill comes among the messages and not after the last.
      expect(await taken(first)).toBe(0);
      const startMs = Math.floor(Date.now() / 1000) * 1000 - seconds * 1000;
      const send = (i: number): Promise<void> => sender.m1(startMs + i * 1000, { flow: 300 + i / 10 });
      const sent = Promise.all(Array.from({ length: seconds - 1 }, (_, i) => send(i)));
      await until(async () => (await taken(first)) >= killAfter, { everyMs: 0 });
      first.child.kill('SIGKILL');
      await first.exit;
      await sent;
      // However late the kill came: one is kept by the broker until the program is there again.
      await send(seconds - 1);

      const second = keep(await startEbbline({ data: data.path, env }));
      const history = (): Promise<HistoryColumns> => flowOfM1(second, startMs, seconds);
      const kept = await until(
        async () => {
          const columns = await history();
          return columns.count.every((count) => count > 0) ? columns : null;
        },
        { everyMs: 100, what: 'every second in history' },
      );
      // 1 L = 10⁻³ m³ and 1 min = 60 s (SI brochure, table 8).
      kept.mean.forEach((flow, i) => expect(flow).toBeCloseTo((300 + i / 10) / 60_000, 12));
      expect(await taken(second)).toBeGreaterThan(0);
    },
  );
});

// The store does not answer, so nothing that was received can have been committed when the kill comes.
suiteNeeding(['influxdb'], 'a program killed between the receipt of a message of QoS 1 and its commit', () => {
  it('is sent the message again and keeps it', { timeout: withinMs }, async () => {
    const data = keep(await builtDataFolder());
    const broker = keep(await startBroker());
    const influx = keep(await startInfluxd());
    const link = keep(await cuttableLink(influx.port));
    const env = {
      EBBLINE_SITE: smallSiteFile,
      EBBLINE_MQTT_URL: broker.url,
      EBBLINE_INFLUX_URL: link.url.replace('mqtt:', 'http:'),
      EBBLINE_SIMULATOR: 'off',
    };
    const first = keep(await startEbbline({ data: data.path, env }));
    // Signed in beforehand, so that the kill comes before a server that does not answer is taken for away.
    expect(await taken(first)).toBe(0);
    link.silence(true);
    const sender = keep(await connectSender(broker.url));
    const atMs = Math.floor(Date.now() / 1000) * 1000 - 5000;
    await sender.m1(atMs, { flow: 333 });
    await until(async () => (await first.get<Intake>('/api/intake')).samples > 0, { what: 'the receipt' });
    first.child.kill('SIGKILL');
    await first.exit;
    // A machine that stood still before the kill let the first be put aside on disk; this one the broker keeps in any case.
    await sender.m1(atMs + 1000, { flow: 334 });

    link.cut();
    link.silence(false);
    const second = keep(await startEbbline({ data: data.path, env }));
    await until(async () => (await taken(second)) > 0, { what: 'the second delivery' });
    const kept = await until(
      async () => {
        const columns = await flowOfM1(second, atMs, 2);
        return columns.count.every((count) => count === 1) ? columns : null;
      },
      { everyMs: 100, what: 'both seconds in history' },
    );
    kept.mean.forEach((flow, i) => expect(flow).toBeCloseTo((333 + i) / 60_000, 12));
  });
});
