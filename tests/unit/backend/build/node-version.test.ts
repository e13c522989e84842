import { pathToFileURL } from 'node:url';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../../helpers/ebbline';
import { startProcess } from '../../../helpers/server-process';

const { nodeVersionFault } = (await import(
  pathToFileURL(join(projectRoot, 'backend/build/node-version.mjs')).href
)) as { nodeVersionFault(version: string): string | null };

describe('the version of Node', () => {
  it.each(['18.20.8', '20.0.0', '20.18.3'])('%s is too old, and that is said in one line', (version) => {
    const fault = nodeVersionFault(version);
    expect(fault).toContain('20.19');
    expect(fault).toContain(version);
    expect(fault).not.toContain('\n');
  });

  it.each(['20.19.0', '20.20.1', '21.0.0', '22.0.0', '22.12.0', '24.1.0'])('%s will do', (version) => {
    expect(nodeVersionFault(version)).toBeNull();
  });

  it('is looked at before anything else: an older one ends the start with that line alone', async () => {
    const older = "Object.defineProperty(process.versions, 'node', { value: '20.18.3' })";
    const program = startProcess(process.execPath, [
      '--import',
      `data:text/javascript,${encodeURIComponent(older)}`,
      join(projectRoot, 'backend/start.mjs'),
    ]);
    expect(await program.exit).toBe(1);
    expect(program.output().trim()).toBe(nodeVersionFault('20.18.3'));
  });
});
