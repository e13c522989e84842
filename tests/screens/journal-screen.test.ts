import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { anAlarmsFrame } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

const row = (sequence: number, more: Partial<JournalRow> = {}): JournalRow => ({
  sequence,
  time: '2026-03-01T11:48:10.100Z',
  sourceTime: '2026-03-01T11:48:10.000Z',
  kind: 'transition',
  alarm: 'e7:AIR-1',
  unit: 'e7',
  entry: 'AIR-1',
  from: 'normal',
  to: 'unacknowledged',
  priority: 2,
  value: null,
  limit: null,
  unit_of_measure: null,
  where: '1',
  actor: null,
  station: null,
  reason: 'conditionTrue',
  previousHash: '0',
  hash: '1',
  ...more,
});
type Answer = { rows: JournalRow[]; next: number | null };

async function open(address: string, answer: (query: URLSearchParams) => Answer): Promise<VueWrapper> {
  const server = new FakeServer();
  opened = await openPage(server, address, {
    '/api/alarms/journal': (path: string) => answer(new URL(path, 'http://x').searchParams),
  });
  server.connect();
  server.send(anAlarmsFrame([]));
  await flushPromises();
  await vi.waitFor(() => expect(opened?.page.find('.journal-acts').exists()).toBe(true), { timeout: 60_000 });
  await flushPromises();
  return opened.page;
}
const asked = (): Record<string, string>[] =>
  (opened?.asked ?? [])
    .filter(({ path }) => path.startsWith('/api/alarms/journal'))
    .map(({ path }) => Object.fromEntries(new URL(path, 'http://x').searchParams));

describe('the journal', () => {
  it('asks for what its address says, newest first, and pages on', async () => {
    const page = await open('/alarms/journal?unit=e7&kind=transition&last=1', (query) =>
      query.has('before') ? { rows: [row(1)], next: null } : { rows: [row(3), row(2)], next: 2 },
    );
    const all = { unit: 'e7', kind: 'transition', from: '2026-03-01T11:00:00.000Z', order: 'newest', limit: '100' };
    expect(asked()[0]).toEqual(all);
    // Of the second page nothing is left: it is asked for because the first held too few.
    expect(asked()[1]).toEqual({ ...all, before: '2' });
    expect(page.findAll('.journal-rows li')).toHaveLength(3);
    expect(page.get('.journal-rows').text()).toContain('AIR-1 Air is coming in: a line has opened · Rack 1 · raised');
    expect(page.find('.journal-more').exists()).toBe(false);
  });

  it('calls entries and the alarms that one follows from by their titles, in the words of the plant', async () => {
    const update = { kind: 'system', from: null, reason: 'standing alarm updated', foldedUnder: 'e7:PUMP-1' } as const;
    const raised = { entry: 'TANK-1', where: null, foldedUnder: 'e1:PUMP-1' } as const;
    const page = await open('/alarms/journal', () => ({
      rows: [
        row(3, { ...update, entry: 'TANK-1', where: null }),
        row(2, { entry: 'OLD-9', where: null }),
        row(1, raised),
      ],
      next: null,
    }));
    const [first, second, third] = page.findAll('.journal-what').map((line) => line.text());
    expect(first).toContain('TANK-1 Separator fills faster than it empties');
    expect(first).toContain('follows from PUMP-1 Transfer or circulation pump has stopped by now');
    // An entry that the catalogue has no more is called by its id.
    expect(second).toContain('OLD-9 · raised');
    expect(third).toContain('raised · follows from PUMP-1 Transfer or circulation pump has stopped, E1');
  });

  it('reads older rows when asked to', async () => {
    const many = (from: number): JournalRow[] => Array.from({ length: 100 }, (_, at) => row(from - at));
    const page = await open('/alarms/journal', (query) =>
      query.has('before') ? { rows: [row(1)], next: null } : { rows: many(101), next: 2 },
    );
    expect(page.findAll('.journal-rows li')).toHaveLength(100);
    expect(page.get('.journal-acts').text()).toContain('100 rows read, older ones follow');
    await page.get('.journal-more').trigger('click');
    await flushPromises();
    expect(page.findAll('.journal-rows li')).toHaveLength(101);
  });

  it('puts what is looked for into the address, and asks again', async () => {
    const page = await open('/alarms/journal', () => ({ rows: [], next: null }));
    await page.get('[name=text]').setValue('hose');
    await page.get('[name=text]').trigger('change');
    await flushPromises();
    await page.get('[name=priority]').setValue('1');
    await flushPromises();
    expect(opened?.router.currentRoute.value.query).toEqual({ text: 'hose', priority: '1' });
    expect(asked().at(-1)).toMatchObject({ text: 'hose', priority: '1' });
    expect(page.text()).toContain('Nothing that was recorded is among what is looked for.');
  });

  it('gives the same rows as a file', async () => {
    const page = await open('/alarms/journal?hall=east&last=0', () => ({ rows: [row(1)], next: null }));
    expect(page.findAll('.journal-exports a').map((link) => link.attributes('href'))).toEqual([
      '/api/alarms/journal/export?hall=east&format=csv',
      '/api/alarms/journal/export?hall=east&format=json',
    ]);
  });

  it('says of what was set aside for how long, until when and what watches meanwhile', async () => {
    const shelved = row(5, {
      kind: 'action',
      from: null,
      to: null,
      actor: 'A. Example',
      reason: 'sensor is changed',
      cause: 'shelve',
      facts: { fromMode: 'inService', toMode: 'shelved', minutes: 30, setAsideUntil: '2026-03-01T12:30:00.000Z' },
    });
    const out = row(6, {
      from: null,
      to: null,
      cause: 'takeOutOfService',
      facts: { fromMode: 'inService', toMode: 'outOfService', interimMeasures: 'a round each hour' },
    });
    const page = await open('/alarms/journal', () => ({ rows: [out, shelved], next: null }));
    const [first, second] = page.findAll('.journal-rows li').map((line) => line.text());
    expect(first).toContain('taken out of service');
    expect(first).toContain('meanwhile: a round each hour');
    expect(second).toContain('shelved');
    expect(second).toContain('until 2026-03-01 13:30:00');
    expect(second).toContain('A. Example: “sensor is changed”');
  });

  it('tells where it can’t be read', async () => {
    const page = await open('/alarms/journal', () => ({ rows: 'none', next: null }) as never);
    expect(page.get('[role=alert]').text()).toContain('a form this screen does not know');
  });
});
