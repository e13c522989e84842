import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import { projectFiles, projectFolder } from '../files/project-files';
import { checkPlanted } from './check-planted';
import { rooms } from './rooms';

const run = promisify(execFile);
const compiler = join(dirname(createRequire(import.meta.url).resolve('vue-tsc/package.json')), 'bin/vue-tsc.js');

async function typeFaults(config: string): Promise<string> {
  try {
    await run(process.execPath, [compiler, '--noEmit', '--pretty', 'false', '-p', join(projectFolder, config)], {
      maxBuffer: 20_000_000,
    });
    return '';
  } catch (fault) {
    return (fault as { stdout?: string }).stdout ?? String(fault);
  }
}

describe('types', () => {
  test.for(rooms)('$config has none wrong', async ({ config }) => {
    expect(await typeFaults(config)).toBe('');
  });

  test('every tsconfig of the project is checked', () => {
    const known = new Set(rooms.map(({ config }) => config));
    const configs = projectFiles().filter(({ path }) => /\/tsconfig\.json$/.test(path));
    expect(configs.map(({ path }) => path).filter((path) => !known.has(path))).toEqual([]);
    expect(rooms.every(({ config }) => existsSync(join(projectFolder, config)))).toBe(true);
  });
});

const outside = [
  'console',
  'process',
  'Buffer',
  'fetch',
  'setTimeout',
  'setInterval',
  'window',
  'document',
  'performance',
  'crypto',
];
const pure = rooms.filter((room) => room.pure);
const gaugeForAbsolute = `
  import { pascalGauge, type PascalAbsolute } from '@ebbline/shared/units/quantity';
  export const wrong: PascalAbsolute = pascalGauge(0);`;

describe('what the compiler must refuse', () => {
  test.for(pure)('any name of Node or browser in $config', ({ config }) => {
    const faults = checkPlanted(
      join(projectFolder, config),
      `${outside.map((name) => `void ${name};`).join('\n')}\nexport {};`,
    );
    for (const name of outside) expect(faults.join('\n')).toContain(`'${name}'`);
    expect(checkPlanted(join(projectFolder, config), 'export const quiet = 1;')).toEqual([]);
  });

  test.for(rooms)('a gauge pressure where an absolute one is wanted in $config', ({ config }) => {
    expect(checkPlanted(join(projectFolder, config), gaugeForAbsolute).join()).toMatch(/Pa gauge/);
  });

  test.for(rooms)('an unchecked index in $config', ({ config }) => {
    const code = 'export const first = (all: readonly number[]): number => all[0];';
    expect(checkPlanted(join(projectFolder, config), code).join()).toMatch(/undefined/);
  });
});
