import { mkdir, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { refusedTarget } from '../../../../../backend/src/connections/care/back-up-folder';
import { stopAfterEach } from '../../../../helpers/stop-after';
import { temporaryFolder } from '../../../../helpers/temporary-folder';

const keep = stopAfterEach();

it('refuses a target in the data folder by its name, or where its links or those of the data folder lead', async () => {
  const root = keep(await temporaryFolder()).path;
  const [data, link, out] = [join(root, 'data'), join(root, 'link'), join(root, 'data/out')];
  await mkdir(join(data, 'history'), { recursive: true });
  await mkdir(join(root, 'else'));
  await symlink(data, link);
  await symlink(join(root, 'else'), out);
  for (const target of [data, join(data, '..copy'), link, join(link, 'copy/of'), join(link, 'history'), out])
    expect(await refusedTarget(target, data), target).toContain('lies in the data folder');
  expect(await refusedTarget(join(data, 'copy'), link)).toContain('lies in the data folder');
  for (const target of ['data-2', 'else', 'new/copy'])
    expect(await refusedTarget(join(root, target), data), target).toBeNull();
});
