import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { startVitest } from 'vitest/node';
import { ClosingLineReporter } from '../../helpers/closing-line-reporter';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';

const keep = stopAfterEach();

test('a group that fails before its tests counts as a failure in the closing line', async () => {
  const folder = keep(await temporaryFolder());
  writeFileSync(
    join(folder.path, 'group.test.ts'),
    `test('one that passes', () => {});
     describe('a group', () => { beforeAll(() => { throw new Error('no start'); }); test('never run', () => {}); });`,
  );
  const lines: string[] = [];
  const reporter = new ClosingLineReporter((line) => lines.push(line));
  const before = process.exitCode;
  const run = await startVitest('test', [], {
    root: folder.path,
    globals: true,
    config: false,
    watch: false,
    reporters: [reporter],
  });
  await run.close();
  process.exitCode = before;
  expect(lines).toEqual(['1 passed, 1 failed, 1 skipped']);
});
