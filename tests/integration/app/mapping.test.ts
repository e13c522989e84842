import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { mappingSchema, triedLinesSchema, type Mapping } from '@ebbline/shared/contract/mapping';
import type { SiteState } from '@ebbline/shared/contract/site-state';
import { connectAsync } from 'mqtt';
import { describe, expect, it } from 'vitest';
import { stopAfterAll } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { postJson, smallSiteFile, startApp } from './running-app';

const keep = stopAfterAll();
const folder = keep(await temporaryFolder());
const siteFile = join(folder.path, 'site.yaml');
const newUnit = '  m3:\n    name: Unit three\n    hall: north\n    template: typeM\n    # nothing is mapped yet\n';
const original = `${readFileSync(smallSiteFile, 'utf8').trimEnd()}\n${newUnit}`;
writeFileSync(siteFile, original);
const app = keep(await startApp({ variables: { EBBLINE_SITE: siteFile } }));
const gateway = await connectAsync(app.mqttUrl);
keep({ stop: () => gateway.endAsync() });

const mapping = async (query = ''): Promise<Mapping> => mappingSchema.parse(await app.get(`/api/mapping${query}`));
const post = async (path: string, body: object) => app.send(`/api/mapping/${path}`, postJson(body));
const intake = () => app.get<{ messages: number; refusals: { code: string }[] }>('/api/intake');

/** A gateway that was never heard of, with names and units of its own. */
const speak = async (second: number): Promise<void> => {
  const time = new Date().toISOString();
  await gateway.publishAsync(
    'works/cdu-m3/status',
    JSON.stringify({
      time,
      SupTemp_degC: 31 + second / 10,
      SepPress_mbarg: -600 - second,
      PumpRun: 'ON',
      serial: 88_213,
    }),
  );
  await gateway.publishAsync('works/cdu-m3/flow_lpm', String(340 + second));
  await gateway.publishAsync('works/junk', Buffer.from([0xff, 0x00, 0xfe]));
};

describe('a plant whose gateway has names of its own', () => {
  it('is listened to beside the intake, and told which points it could be and why', async () => {
    expect(await mapping()).toMatchObject({ listening: null, places: [] });
    const before = await intake();
    expect((await post('listen', { filter: 'works/#' })).status).toBe(200);
    const heard = await until(
      async () => {
        await speak(2);
        const now = await mapping();
        return now.places.length >= 5 ? now : null;
      },
      { what: 'the places of the new gateway' },
    );
    expect(heard.listening).toMatchObject({ filter: 'works/#', over: false, trouble: null });
    const best = Object.fromEntries(
      heard.places.map(({ topic, path, proposals: [one] }) => [
        [topic, ...path].join(' '),
        one === undefined ? 'not known' : `${one.holder} ${one.point}`,
      ]),
    );
    expect(best).toEqual({
      'works/cdu-m3/status SupTemp_degC': 'm3 supply.temperature',
      'works/cdu-m3/status SepPress_mbarg': 'm3 separator.pressure',
      'works/cdu-m3/status PumpRun': 'm3 pump.running',
      'works/cdu-m3/status serial': 'not known',
      'works/cdu-m3/flow_lpm': 'm3 loop.flow',
    });
    // Nothing of it went through the intake: neither counted nor refused.
    const after = await intake();
    expect(after.messages).toBe(before.messages);
    expect(after.refusals).toEqual(before.refusals);
  });

  it('gets lines that fit the site file, and what a person has to put in is said and asked for', async () => {
    const { places } = await mapping('?unit=m3');
    const lines = places.flatMap(({ proposals: [one] }) => (one === undefined ? [] : [one]));
    const text = (extra: string): string =>
      [
        'units:',
        '  m3:',
        '    points:',
        ...lines.map(({ line }) => `      ${line.replace(/ \}$/, line.startsWith('loop.flow') ? `${extra} }` : ' }')}`),
      ].join('\n');
    const tried = async (yaml: string) => triedLinesSchema.parse(await (await post('try', { lines: yaml })).json());
    const without = await tried(text(''));
    expect(without.check.accepted).toBe(false);
    expect(without.check.faults.map(({ key }) => key).join()).toContain('loop.flow.hose');
    expect(lines.find(({ point }) => point === 'loop.flow')?.needs.join()).toContain('hose');
    const fits = await tried(text(', hose: supply'));
    expect(fits.check).toMatchObject({ accepted: true, faults: [] });
    expect(fits.text).toContain('# nothing is mapped yet');
    // Nothing is changed by asking.
    expect(readFileSync(siteFile, 'utf8')).toBe(original);

    writeFileSync(siteFile, fits.text ?? '');
    const state = (await (await app.send('/api/site/reload', postJson({}))).json()) as SiteState;
    expect(state.refused).toBeNull();
    const setup = await until(
      async () => {
        await speak(3);
        const { points } = await app.get<{ points: { reading: { id: string }; arriving: string }[] }>(
          '/api/units/m3/setup',
        );
        const found = points.filter(({ arriving }) => arriving === 'arriving').map(({ reading }) => reading.id);
        return found.length >= 4 ? found : null;
      },
      { what: 'the points of the new unit' },
    );
    expect(setup.sort()).toEqual(['loop.flow', 'pump.running', 'separator.pressure', 'supply.temperature']);
    // What is a point now maps to nothing no more.
    const left = await until(
      async () => {
        const { places: now } = await mapping('?unit=m3');
        return now.length === 1 ? now : null;
      },
      { what: 'the places that are left' },
    );
    expect(left.map(({ path }) => path)).toEqual([['serial']]);
  });

  it.for([
    ['units:\n  m9:\n    points: { supply.temperature: { topic: a } }', 'has none of this id'],
    ['units:\n  m1:\n    points: { supply.temperature: { topic: a } }', 'stands in the site file already'],
    ['units:\n  m3: { name: Other }', 'only `points`'],
    ['site: { demo: true }', 'only `units` and `halls`'],
    ['units: [', 'in the lines'],
    ['', 'there are no lines'],
  ])('has lines refused that do more than add points: %s', async ([lines, why]) => {
    const reply = triedLinesSchema.parse(await (await post('try', { lines })).json());
    expect(reply.text).toBeNull();
    expect(reply.check.faults[0]?.message).toContain(why);
  });

  it('is listened to by one person at a time, by a filter that there can be, and by who may change the site', async () => {
    const codeOf = async (reply: Response) => [reply.status, ((await reply.json()) as { code?: string }).code];
    expect(await codeOf(await post('listen', { filter: 'a/#/b' }))).toEqual([400, 'FILTER_MALFORMED']);
    const other = await app.signIn.proof('Otto');
    const asOther = (path: string, body: object) =>
      fetch(`${app.url}/api/mapping/${path}`, {
        ...postJson(body),
        headers: { ...other, 'content-type': 'application/json' },
      });
    expect(await codeOf(await asOther('listen', { filter: 'b/#' }))).toEqual([409, 'LISTENING_ALREADY']);
    expect((await asOther('stop', {})).status).toBe(200);
    expect((await mapping()).listening).toMatchObject({ over: true });
  });
});
