import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Mode, PointList, Site } from '@ebbline/shared/contract/http-api';
import { siteCheckSchema, siteStateSchema } from '@ebbline/shared/contract/site-state';
import { describe, expect, test } from 'vitest';
import { addressIn, launchEbbline, projectRoot, startEbbline } from '../helpers/ebbline';
import { processTree } from '../helpers/process-tree';
import { stopAfterAll } from '../helpers/stop-after';
import { until } from '../helpers/until';
import { dataFolder } from './data-folder';
import { isRunning } from './is-running';

const keep = stopAfterAll();

describe('npm start', () => {
  test('shows a living demo hall, refuses a second start on the same data, and ends with Ctrl-C', async () => {
    const data = keep(await dataFolder());
    const ebbline = keep(await startEbbline({ data: data.path, ownGroup: true }));
    expect(addressIn(ebbline.output())).toBe(ebbline.url);

    const site = await ebbline.get<Site>('/api/site');
    expect(site).toMatchObject({ demo: true });
    expect(site.halls).toHaveLength(2);
    expect(site.units).toHaveLength(16);
    await until(async () => (await ebbline.health()).status === 'ok', { everyMs: 100, what: 'health ok' });
    for (const unit of site.units) {
      const margin = await until(
        async () => goodValue(await ebbline.get<PointList>(`/api/units/${unit.id}/points`), 'vacuumMargin'),
        {
          everyMs: 100,
          what: `the vacuum margin of ${unit.id}`,
        },
      );
      expect(margin).toBeGreaterThan(0);
    }
    const { units } = await ebbline.get<{ units: readonly { mode: Mode }[] }>('/api/units');
    expect(units.map(({ mode }) => mode)).toEqual(units.map(() => 'running'));
    const page = await fetch(ebbline.url);
    expect(page.headers.get('content-type')).toMatch(/text\/html/);

    // What a newcomer would copy is told of without a warning, by the thread of the built program that judges it.
    // On a busy machine the plants may take longer to settle than it takes to miss them.
    const told = ebbline.output().replaceAll(/^.* warning health NO_SAMPLES:.*$/gm, '');
    expect(told).not.toMatch(/warning/i);
    const text = await readFile(join(projectRoot, 'simulator/demo-site/site.yaml'), 'utf8');
    const judged = siteCheckSchema.parse(await (await ebbline.post('/api/site/check', { text })).json());
    expect(judged).toMatchObject({ accepted: true, faults: [], warnings: [] });
    const { refused } = siteStateSchema.parse(await (await ebbline.post('/api/site/reload', {})).json());
    expect(refused).toBeNull();

    const second = keep(launchEbbline({ data: data.path }));
    expect(await second.exit).toBe(1);
    expect(second.output()).toContain(data.path);
    await until(async () => (await ebbline.health()).status === 'ok', { everyMs: 100, what: 'health still ok' });

    const processes = processTree(ebbline.pid);
    expect(processes.length).toBeGreaterThan(1);
    process.kill(-ebbline.pid, 'SIGINT');
    expect(await ebbline.exit).toBe(0);
    expect(ebbline.output().trimEnd().split('\n').slice(-2)).toEqual([expect.stringMatching(/^Ending: /), 'Ended.']);
    await until(() => processes.every((pid) => !isRunning(pid)), { what: 'every process to end' });
  });
});

function goodValue({ points }: PointList, id: string): number | null {
  const point = points.find((candidate) => candidate.id === id);
  return point?.quality === 'bad' ? null : (point?.value ?? null);
}
