import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ClosingStack } from '../../../backend/src/main/closing-stack';
import { watchSite } from '../../../backend/src/main/open-reload';
import type { SiteState } from '@ebbline/shared/contract/site-state';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { smallSiteFile, startApp } from './running-app';

const keep = stopAfterEach();

it('an edit of the site file that comes while the program starts is in force soon after', async () => {
  const folder = keep(await temporaryFolder());
  const file = join(folder.path, 'site.yaml');
  const before = readFileSync(smallSiteFile, 'utf8');
  writeFileSync(file, before);
  const app = keep(
    await startApp({
      variables: { EBBLINE_SITE: file },
      onSaid: (line) => {
        // Said once the file is read.
        if (line.startsWith('Site: ')) writeFileSync(file, `${before}\n# another content\n`);
      },
    }),
  );
  await until(() => app.said.some((line) => line.includes('the new content is in force')), { what: 'the new content' });
  expect((await app.get<SiteState>('/api/site/state')).refused).toBeNull();
});

it('what is heard of the site file before anybody listens is told to the first who does', async () => {
  const folder = keep(await temporaryFolder());
  const file = join(folder.path, 'site.yaml');
  writeFileSync(file, 'one');
  const closing = new ClosingStack();
  keep({ stop: () => closing.closeAll() });
  const news = await watchSite(file, closing);
  writeFileSync(file, 'two');
  await new Promise((resolve) => setTimeout(resolve, 600));
  let told = 0;
  news.listen(() => (told += 1));
  expect(told).toBe(1);
});
