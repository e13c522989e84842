import { mkdir, rm, symlink, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Planted } from './planted-violations';

const evaluation = 'backend/src/evaluation';
const stages = ['slots', 'site', 'decode', 'sample', 'quality', 'derive', 'alarm-rules', 'alarm-lifecycle'];
const laterStages = ['forecast', 'learnt-normal', 'diagnosis', 'pipeline', 'limit-trial', 'mapping'];

const packages = [
  ...[
    'zod',
    'mqtt',
    'aedes',
    'influx',
    '@duckdb/node-api',
    'libsql',
    '@node-rs/argon2',
    'openid-client',
    '@zxcvbn-ts/core',
    'socket.io',
    'socket.io-client',
    'uplot',
    'yaml',
  ],
  ...['rate-limiter-flexible', 'proxy-addr'],
  ...['@nestjs/common', 'rxjs', 'vue', 'undeclared', 'only-for-development'],
];
const declared = Object.fromEntries(
  packages.filter((name) => !/undeclared|only-/.test(name)).map((name) => [name, '1.0.0']),
);

const room = { 'package.json': manifest({ dependencies: { ...declared, '@ebbline/shared': '1.0.0' } }) };

/** A small tree with a file in every room and no violation; imports go along allowed arrows. */
const files: Readonly<Record<string, string>> = {
  'shared/package.json': manifest({
    name: '@ebbline/shared',
    exports: { './*': './*.ts' },
    dependencies: { zod: '1.0.0' },
  }),
  'shared/hydraulics/loss.ts': code(),
  'shared/heat/balance.ts': code('../hydraulics/loss'),
  'shared/contract/reading.ts': code('zod'),
  'backend/package.json': manifest({
    dependencies: { ...declared, '@ebbline/shared': '1.0.0' },
    devDependencies: { 'only-for-development': '1.0.0' },
  }),
  ...Object.fromEntries(
    [...stages, ...laterStages].map((stage, i, all) => [
      `${evaluation}/${stage}/stage.ts`,
      i === 0 ? code('@ebbline/shared/heat/balance') : code(`../${all[i - 1]}/stage`, '../pipeline/outputs'),
    ]),
  ),
  [`${evaluation}/pipeline/outputs.ts`]: code(),
  [`${evaluation}/derive/circle.ts`]: code('./stage'),
  'backend/src/access/rights.ts': code('@ebbline/shared/contract/reading'),
  'backend/src/ports/clock.ts': code('../evaluation/pipeline/outputs'),
  'backend/src/connections/health/room.ts': code('../../ports/clock', '@nestjs/common'),
  'backend/src/connections/mqtt-intake/room.ts': code('mqtt'),
  'backend/src/runner/runner.ts': code('../ports/clock', '../evaluation/pipeline/stage', 'node:fs'),
  'backend/src/main.ts': code('./runner/runner', './connections/health/room'),
  'frontend/package.json': room['package.json'],
  'frontend/src/text/words.ts': code('@ebbline/shared/contract/reading'),
  'frontend/src/api/request.ts': code('@ebbline/shared/contract/reading'),
  'frontend/src/state/state.ts': code('../api/request', 'vue'),
  'frontend/src/components/Quiet.vue': vueCode('../text/words'),
  'frontend/src/charts/chart.ts': code('uplot'),
  'frontend/src/screens/hall/hall.ts': code('../../state/state', '../../components/Quiet.vue'),
  'frontend/src/screens/loop/loop.ts': code('../../charts/chart'),
  'simulator/package.json': room['package.json'],
  'simulator/src/plant/plant.ts': code('@ebbline/shared/contract/reading'),
  'simulator/src/faults/fault.ts': code('../plant/plant'),
  'simulator/src/scenario/scenario.ts': code('../faults/fault'),
  'simulator/src/publish/publish.ts': code('mqtt'),
  'tests/package.json': room['package.json'],
  'tests/helpers/helper.ts': code('../../backend/src/main', '../../simulator/src/plant/plant'),
};

export async function writeCleanTree(folder: string): Promise<void> {
  const fake = packages.flatMap((name): [string, string][] => [
    [`node_modules/${name}/package.json`, manifest({ name, main: 'index.js', type: 'module' })],
    [`node_modules/${name}/index.js`, 'export const nothing = 0;\n'],
  ]);
  for (const [path, text] of [...Object.entries(files), ...fake]) await write(join(folder, path), text);
  await mkdir(join(folder, 'node_modules/@ebbline'), { recursive: true });
  await symlink(join(folder, 'shared'), join(folder, 'node_modules/@ebbline/shared'));
}

/** Adds the one bad import, and gives back what takes it out again. */
export async function plantIn(folder: string, { file, specifier }: Planted): Promise<() => Promise<void>> {
  const path = join(folder, file);
  const before = files[file];
  await write(path, file.endsWith('.vue') ? vueCode(specifier) : `${before ?? ''}${code(specifier)}`);
  return () => (before === undefined ? rm(path) : write(path, before));
}

async function write(path: string, text: string): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, text);
}

function manifest(fields: Readonly<Record<string, unknown>>): string {
  return JSON.stringify({ name: 'planted', version: '1.0.0', ...fields });
}

function code(...specifiers: readonly string[]): string {
  const imports = specifiers.map((specifier) => `import type {} from '${specifier}';\n`);
  return `${imports.join('')}export const here = 1;\n`;
}

function vueCode(specifier: string): string {
  return `<script setup lang="ts">\nimport '${specifier}';\n</script>\n<template><p>quiet</p></template>\n`;
}
