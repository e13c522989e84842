import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { askRaw } from '../../helpers/ask-raw';
import { stopAfterAll } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { startApp } from './running-app';

const keep = stopAfterAll();
const folder = keep(await temporaryFolder());
const mark = 'not to be served';
const frontend = join(folder.path, 'frontend');
mkdirSync(join(frontend, 'assets'), { recursive: true });
mkdirSync(join(frontend, '.git'));
writeFileSync(join(folder.path, 'beside.txt'), mark);
writeFileSync(join(frontend, '.git', 'config'), mark);
writeFileSync(join(frontend, '.env'), mark);
writeFileSync(join(frontend, 'index.html'), '<!doctype html><title>Ebbline</title>');
writeFileSync(join(frontend, 'assets', 'a.js'), 'export {};');
const app = keep(await startApp({ frontendFolder: frontend }));

it('serves what was built', async () => {
  expect((await askRaw(`${app.url}/assets/a.js`)).text).toBe('export {};');
  expect((await askRaw(`${app.url}/`)).text).toContain('Ebbline');
});

it.for([
  '/../beside.txt',
  '/%2e%2e/beside.txt',
  '/assets/..%2f..%2fbeside.txt',
  '/assets/%2e%2e%5c%2e%2e%5cbeside.txt',
  '/%00',
  '/.git/config',
  '/.env',
  '/assets/',
  '/data/people.db',
  '/package.json',
])('serves nothing beside it, nothing hidden, and no list of a folder: %s', async (path) => {
  const { text, status } = await askRaw(`${app.url}${path}`);
  expect(text).not.toContain(mark);
  expect(text).not.toContain('a.js');
  expect(text).not.toMatch(/dependencies|SQLite/);
  // An address of no file is one of a screen.
  if (status === 200) expect(text).toContain('<title>Ebbline</title>');
});
