import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const command = fileURLToPath(new URL('../../backend/site-check.mjs', import.meta.url));
const small = fileURLToPath(new URL('../helpers/sites/small-site.yaml', import.meta.url));
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'site-check-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

/** Runs the command as a person would, with a data folder of its own. */
const run = (...args: readonly string[]) =>
  new Promise<{ code: number; out: string; complaints: string }>((resolve) => {
    const env = { ...process.env, EBBLINE_DATA: folder, NODE_ENV: 'production' };
    execFile(process.execPath, [command, ...args], { env }, (error, out, complaints) => {
      resolve({ code: error === null ? 0 : Number(error.code), out, complaints });
    });
  });

describe('npm run site:check', () => {
  it('says in a paragraph what it understood of a good file, and exits with 0', async () => {
    const { code, out, complaints } = await run(small);
    expect({ code, complaints }).toEqual({ code: 0, complaints: '' });
    expect(out).toMatch(/Small test site.*1 hall.*2 units.*29 measured points.*11 topics/);
  });

  it('prints every fault with file, line and key, one a line, and exits with 1', async () => {
    const bad = join(folder, 'bad.yaml');
    const text = readFileSync(small, 'utf8');
    writeFileSync(bad, text.replace('altitude: 120 m', 'altitude: 1200 m').replace('timeZone: UTC', 'tz: UTC'));
    const { code, out, complaints } = await run(bad);
    const lines = complaints.trim().split('\n');
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(lines[0]).toMatch(/bad\.yaml:2: site\.timeZone: is missing/);
    expect(lines[1]).toMatch(/bad\.yaml:5: site\.tz: unknown key; known here are id, name, timeZone/);
    expect(lines[2]).toMatch(
      /bad\.yaml:\d+: templates\.typeM\.pressureWindow: this plant has no pressure window at 1200 m/,
    );
    expect(lines.at(-1)).toMatch(/3 faults; not fit to run/);
  });

  it('tells how it is used, and exits with 1', async () => {
    expect(await run()).toMatchObject({ code: 1, complaints: expect.stringMatching(/^Usage/) as string });
  });

  it('prints the reference of all keys', async () => {
    const { code, out } = await run('--keys');
    expect(code).toBe(0);
    expect(out).toMatch(/^# The site file/);
  });
});
