import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, it } from 'vitest';
import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { journalFactsSchema } from '@ebbline/shared/contract/journal-facts';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { postJson, startApp } from './running-app';
import { connectSender } from './telemetry';

interface Page {
  readonly rows: readonly JournalRow[];
  readonly next: number | null;
}

const keep = stopAfterAll();
const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);
const app = keep(await startApp({ variables: { EBBLINE_CLOCK: 'source' } }));
const admin = await app.signIn.admin();
const path = '/api/alarms/journal';
const page = (query: string): Promise<Page> => app.get<Page>(`${path}?${query}`);
const asAdmin = (query: string): Promise<Response> => fetch(`${app.url}${path}${query}`, { headers: admin });
const comment = '=HYPERLINK("http://a.example"), seen';

beforeAll(async () => {
  const sender = keep(await connectSender(app.mqttUrl));
  for (let second = 0; second < 60; second++)
    await sender.m1(startMs + second * 1000, { leak: second < 2 ? 'dry' : 'wet' });
  const raised = await until(async () => (await page('entry=WATER-1')).rows[0], { what: 'the row of the alarm' });
  const id = encodeURIComponent(raised.alarm ?? '');
  expect((await app.send(`/api/alarms/${id}/acknowledge`, postJson({ operator: 'Ines', comment }))).status).toBe(200);
});

describe('a row of the journal', () => {
  it('holds what records of alarms are to hold', async () => {
    const [row] = (await page('entry=WATER-1&kind=transition')).rows;
    expect(row).toMatchObject({ unit: 'm1', hall: 'north', from: 'normal', to: 'unacknowledged', priority: 1 });
    expect(row).toMatchObject({ cause: 'conditionTrue', foldedUnder: null });
    expect(row?.facts).toMatchObject({ quality: 'good', class: 'water', position: 'north' });
    expect(journalFactsSchema.parse(row?.facts)).toEqual(row?.facts);
    expect(Date.parse(row?.since ?? '')).toBeGreaterThanOrEqual(startMs);
    expect(Date.parse(row?.since ?? '')).toBeLessThanOrEqual(Date.parse(row?.sourceTime ?? ''));
    expect(Math.abs(Date.now() - Date.parse(row?.time ?? ''))).toBeLessThan(600_000);
  });

  it.each([
    ['unit=m1&entry=WATER-1&priority=1', 2],
    ['hall=north&kind=action', 1],
    ['actor=Ines', 1],
    ['actor=Ine', 0],
    ['text=seen%20water', 1],
    [`text=${'se%20'.repeat(10)}`, 1],
    ['text=%22%20OR%20*%20a', 0],
    ['entry=WATER-1&from=2031-05-06T07%3A00%3A00Z&to=2031-05-06T08%3A00%3A00Z', 2],
    ['entry=WATER-1&to=2031-05-06T07%3A00%3A00Z', 0],
    ["unit=m1'%20OR%201%3D1%20--", 0],
  ])('is found by %s', async (query, count) => {
    const { rows, next } = await page(query);
    expect([rows.length, next]).toEqual([count, null]);
  });

  it('comes newest first, page by page', async () => {
    const all = (await page('')).rows.map(({ sequence }) => sequence);
    const found: number[] = [];
    let query = 'order=newest';
    for (;;) {
      const { rows, next } = await page(`${query}&limit=1`);
      found.push(...rows.map(({ sequence }) => sequence));
      if (next === null) break;
      query = `before=${next}`;
    }
    expect(found).toEqual([...all].reverse());
  });

  it.each([
    'after=1&before=9',
    'after=1&order=newest',
    'before=1&order=oldest',
    'priority=4',
    'kind=other',
    'limit=501',
    'text=%2D%2D',
    `text=${'a'.repeat(201)}`,
    `text=${'un%20'.repeat(11)}`,
    `text=${'no-'.repeat(11)}`,
    'unknown=1',
    'from=2031-05-06T08%3A00%3A00Z&to=2031-05-06T07%3A00%3A00Z',
  ])('is not looked for by %s', async (query) => {
    expect(await page(query)).toMatchObject({ code: 'QUERY_MALFORMED' });
  });

  it('of people and access is for those who may read it, whatever is asked for', async () => {
    for (const query of ['', 'kind=action', 'text=signed', `actor=${encodeURIComponent('Ada of the tests')}`])
      expect((await page(query)).rows.filter(({ reason }) => /signed in|password/.test(reason ?? ''))).toEqual([]);
    expect(((await (await asAdmin('?text=signed')).json()) as Page).rows.length).toBeGreaterThan(0);
    const taken = await (await app.send(`${path}/export?format=csv`)).text();
    expect(taken).not.toMatch(/firstAdminSet|signedIn|tokenAdded/);
    expect(await (await asAdmin('/export?format=csv')).text()).toMatch(/firstAdminSet/);
  });
});

describe('the journal as a file', () => {
  it('is CSV that no spreadsheet takes for formulas, with the head of the chain in its last line', async () => {
    const reply = await app.send(`${path}/export?format=csv&entry=WATER-1`);
    expect(reply.headers.get('content-type')).toBe('text/csv; charset=utf-8; header=present');
    expect(reply.headers.get('content-disposition')).toMatch(/^attachment; filename="journal-\d+\.csv"$/);
    const text = await reply.text();
    expect(text.endsWith('\r\n')).toBe(true);
    const rows = parse<Record<string, string>>(text, { columns: true });
    expect(rows.map(({ kind }) => kind)).toEqual(['transition', 'action', 'head']);
    expect(rows[1]).toMatchObject({ actor: 'Ines', reason: `'${comment}`, cause: 'acknowledge', to: 'acknowledged' });
    expect(rows[0]).toMatchObject({
      quality: 'good',
      class: 'water',
      position: 'north',
      sequence: expect.any(String) as string,
    });
    const last = ((await (await asAdmin('?order=newest&limit=1')).json()) as Page).rows[0];
    expect(rows[2]).toMatchObject({ sequence: String(last?.sequence), hash: last?.hash });
  });

  it('is JSON with the same rows as the pages, and the head of the chain', async () => {
    const reply = await app.send(`${path}/export?format=json&unit=m1`);
    expect(reply.headers.get('content-type')).toMatch(/^application\/json/);
    const { head, rows } = (await reply.json()) as Page & { head: { sequence: number; hash: string } };
    expect(rows).toEqual((await page('unit=m1')).rows);
    expect(Object.keys(head)).toEqual(['sequence', 'hash']);
    expect(await (await app.send(`${path}/export?format=json&unit=none`)).json()).toEqual({ head, rows: [] });
  });

  it('is given only to who may look, and in a form that there is', async () => {
    const none = await fetch(`${app.url}${path}/export?format=csv`);
    expect([none.status, ((await none.json()) as { code: string }).code]).toEqual([401, 'SIGN_IN_NEEDED']);
    for (const query of ['', '?format=xml', '?format=csv&limit=1']) {
      const reply = await app.send(`${path}/export${query}`);
      expect([reply.status, ((await reply.json()) as { code: string }).code]).toEqual([400, 'QUERY_MALFORMED']);
    }
  });

  it('stands in the API document with its filter', async () => {
    const document = await app.get<{
      paths: Record<string, { get: { parameters: { name: string; required: boolean }[] } }>;
    }>('/api/openapi.json');
    const { parameters } = document.paths[`${path}/export`]?.get ?? { parameters: [] };
    expect(parameters.filter(({ required }) => required).map(({ name }) => name)).toEqual(['format']);
    expect(parameters.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['unit', 'hall', 'entry', 'text', 'from']),
    );
  });
});
