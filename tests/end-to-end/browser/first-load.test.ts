import { randomBytes } from 'node:crypto';
import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeAll, describe, expect, inject, test } from 'vitest';
import { stopAfterAll } from '../../helpers/stop-after';
import { dataFolder } from '../data-folder';
import { startEbbline } from '../../helpers/ebbline';
import { entriesOf, firstLoads, kbOf, type Scripts } from './first-load';

/** What a phone on a poor line may be asked to fetch before it shows the first screen, as it is sent to a browser. */
const mostKb = 200;

describe('the first load of the built frontend', () => {
  const keep = stopAfterAll();
  let html = '';
  let url = '';
  const scripts = new Map<string, string>();
  const bytes = new Map<string, number>();
  beforeAll(async () => {
    const data = keep(await dataFolder());
    ({ url } = keep(await startEbbline({ data: data.path, env: { EBBLINE_SIMULATOR: 'off' } })));
    html = await (await fetch(url)).text();
    const [entry = ''] = entriesOf(html);
    const builds = (await readdir(inject('buildFolder'))).filter((name) => name.startsWith('frontend-'));
    for (const build of builds) {
      const assets = join(inject('buildFolder'), build, 'assets');
      const names = await readdir(assets);
      if (!names.includes(entry)) continue;
      for (const name of names.filter((one) => one.endsWith('.js')))
        scripts.set(name, await readFile(join(assets, name), 'utf8'));
    }
    for (const name of scripts.keys()) {
      const reply = await ask(name, 'gzip, deflate, br');
      bytes.set(name, Number(reply.headers.get('content-length')));
    }
  });

  test(`is at most ${mostKb} kB of compressed JavaScript, whichever screen is gone to first`, () => {
    const loads = firstLoads(html, scripts);
    for (const screen of ['Loop', 'Alarm', 'Trends', 'Setup', 'Energy', 'TightnessRecord'])
      expect([...loads.keys()].join(' ')).toContain(`${screen}Screen`);
    for (const [screen, names] of loads) {
      const kb = kbOf(bytes, names);
      expect(kb, screen).toBeLessThanOrEqual(mostKb);
      // A count that misses the program itself would prove nothing: Vue alone is more than this.
      expect(kb, screen).toBeGreaterThan(30);
    }
  });

  test('is sent compressed to whoever takes it so, the smaller way first, and as it is to whoever does not', async () => {
    const [name = ''] = entriesOf(html);
    const sizes: number[] = [];
    for (const [taken, coding] of [
      ['gzip, deflate, br', 'br'],
      ['gzip, br;q=0', 'gzip'],
      ['gzip;q=0, identity', null],
    ] as const) {
      const reply = await ask(name, taken);
      expect(reply.headers.get('content-encoding'), taken).toBe(coding);
      expect(reply.headers.get('vary'), taken).toContain('Accept-Encoding');
      expect(reply.headers.get('cache-control'), taken).toContain('immutable');
      expect(reply.headers.get('content-type'), taken).toMatch(/^(text|application)\/javascript/);
      expect(await reply.text(), taken).toBe(scripts.get(name));
      sizes.push(Number(reply.headers.get('content-length')));
    }
    expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
    expect(sizes[0]).toBeLessThan((sizes[2] ?? 0) / 2);
  });

  test('counts what a script needs, what it needs in turn, and what its screen fetches at once', () => {
    const large = randomBytes(150_000).toString('latin1').replaceAll(/["'`]/g, '');
    const built: Scripts = new Map([
      [
        'index-a.js',
        'import{a}from"./one-a.js";const load=()=>import("./screen-a.js"),other=()=>import("./other-a.js")',
      ],
      ['one-a.js', 'export*from"./two-a.js"'],
      ['two-a.js', ''],
      ['screen-a.js', 'import"./index-a.js";import"./three-a.js";import(`./chart-a.js`)'],
      ['other-a.js', large],
      ['three-a.js', ''],
      ['chart-a.js', large],
    ]);
    const page = '<script type="module" crossorigin src="/assets/index-a.js"></script>';
    const loads = firstLoads(page, built);
    expect([...(loads.get('the page') ?? [])].sort()).toEqual(['index-a.js', 'one-a.js', 'two-a.js']);
    const screen = loads.get('screen-a.js') ?? [];
    expect([...screen].sort()).toEqual([...built.keys()].filter((name) => name !== 'other-a.js').sort());
    const sent = new Map([...built].map(([name, text]) => [name, text.length]));
    expect(kbOf(sent, screen)).toBeGreaterThan(140);
    expect(kbOf(sent, ['index-b.js'])).toBeNaN();
    expect(() => firstLoads('<script src="/assets/index-b.js"></script>', built)).toThrow('index-b.js');
  });

  const ask = (name: string, taken: string): Promise<Response> =>
    fetch(`${url}/assets/${name}`, { headers: { 'accept-encoding': taken } });
});
