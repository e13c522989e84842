import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Health } from '@ebbline/shared/contract/http-api';
import type { SiteCheck, SiteState } from '@ebbline/shared/contract/site-state';
import { expect, it } from 'vitest';
import { stopAfterAll } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { postJson, startApp } from './running-app';

const keep = stopAfterAll();
const folder = keep(await temporaryFolder());
const begun = join(folder.path, 'begun');
const go = join(folder.path, 'go');

/** Never looks up from its work until the file is there, then says what it was asked. */
const busyWorker = `
  import { existsSync, writeFileSync } from 'node:fs';
  import { parentPort, workerData } from 'node:worker_threads';
  if (workerData.job === 'check') writeFileSync(${JSON.stringify(begun)}, '');
  while (!existsSync(${JSON.stringify(go)}));
  parentPort.postMessage(
    workerData.job === 'read'
      ? 'unchanged'
      : { accepted: true, summary: workerData.text, faults: [], warnings: [] },
  );
`;
const app = keep(await startApp({ siteWorker: new URL(`data:text/javascript,${encodeURIComponent(busyWorker)}`) }));

it('goes on with everything else while a site file is read and a text is checked', async () => {
  const order: string[] = [];
  const told = <Value>(what: string, value: Value): Value => {
    order.push(what);
    return value;
  };
  const check = async (text: string): Promise<Response> => {
    const answer = await app.send('/api/site/check', postJson({ text }));
    return told(`${text} ${answer.status}`, answer);
  };
  const reload = app.send('/api/site/reload', postJson({})).then((answer) => told('reload', answer));
  const first = check('first');
  await until(() => existsSync(begun));
  const others = [check('second'), check('third')];
  const overtaken = await Promise.race(others);
  expect((await overtaken.json()) as { code: string }).toMatchObject({ code: 'SITE_CHECK_OVERTAKEN' });
  await app.get<Health>('/api/health');
  told('everything else', null);
  writeFileSync(go, '');
  expect((await (await first).json()) as SiteCheck).toMatchObject({ accepted: true, summary: 'first' });
  const statuses = (await Promise.all(others)).map(({ status }) => status);
  expect((await (await reload).json()) as SiteState).toMatchObject({ refused: null });
  expect(statuses.sort()).toEqual([200, 409]);
  expect(order[0]).toMatch(/^(second|third) 409$/);
  expect(order[1]).toBe('everything else');
  expect(order).toHaveLength(5);
  expect(app.faults).toEqual([]);
});
