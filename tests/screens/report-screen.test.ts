import type { Report } from '@ebbline/shared/contract/report';
import { reportSchema } from '@ebbline/shared/contract/report';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { reportExamples } from '../contract/http-examples-report';
import { anAlarmsFrame, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { plain } from './fixtures/loop-shown';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
beforeEach(() => vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] }));
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const example = reportExamples['get /api/report'].reply;
const reportOf = (path: string, more: Partial<Report> = {}): Report => {
  const asked = new URL(path, 'http://test').searchParams;
  const [from, to] = [asked.get('from') ?? '', asked.get('to') ?? ''];
  return reportSchema.parse({ ...example, hall: null, from, to, until: noon, madeAt: noon, energy: null, ...more });
};
const frameAt = (now: string) => {
  const frame = anAlarmsFrame([]);
  return { ...frame, clock: { ...frame.clock, now } };
};

/** The report of the site at noon UTC, in its early shift: the site's clock is an hour ahead. */
async function show(more: Partial<Report> = {}, answers: Record<string, unknown> = {}) {
  const server = new FakeServer();
  opened = await openPage(server, '/report', {
    '/api/report': (path: string) => reportOf(path, more),
    ...answers,
  });
  server.connect();
  server.send(frameAt(noon));
  await flushPromises();
  const { asked, page } = opened;
  await vi.waitFor(() => expect(page.find('[data-testid=report]').exists()).toBe(true), { timeout: 60_000 });
  const reports = (): string[] =>
    asked.flatMap(({ path }) => {
      const { pathname, searchParams } = new URL(path, 'http://test');
      return pathname === '/api/report' ? [(searchParams.get('from') ?? '').slice(11, 16)] : [];
    });
  return { page, server, reports, router: opened.router };
}
const button = (page: VueWrapper, words: string) => page.findAll('button').find((one) => plain(one.text()) === words);
async function press(page: VueWrapper, words: string): Promise<void> {
  expect(button(page, words), words).toBeDefined();
  await button(page, words)?.trigger('click');
  await flushPromises();
}

describe('the report of the shift that runs', () => {
  it('is that of the next shift once the clock has come to it', async () => {
    const { page, reports, server } = await show();
    expect(reports()).toEqual(['05:00']);
    server.send(frameAt('2026-03-01T13:00:05.000Z'));
    await flushPromises();
    expect(reports()).toEqual(['05:00', '13:00']);
    expect(page.text()).toContain('late shift');
  });

  it('stays with the shift for which a form was opened, so that nothing typed at the change of shifts is lost', async () => {
    for (const [opens, field] of [
      ['Hand over…', 'taker'],
      ['Write a note…', 'text'],
    ] as const) {
      const { page, reports, router, server } = await show();
      await press(page, opens);
      await page.get(`[name=${field}]`).setValue('Omar');
      server.send(frameAt('2026-03-01T13:00:05.000Z'));
      await flushPromises();
      expect((page.get(`[name=${field}]`).element as HTMLInputElement).value).toBe('Omar');
      expect([reports(), page.text().includes('early shift')]).toEqual([['05:00'], true]);
      expect(router.currentRoute.value.query).toEqual({
        from: '2026-03-01T05:00:00.000Z',
        to: '2026-03-01T13:00:00.000Z',
      });
      await press(page, 'Shift that runs');
      expect(reports()).toEqual(['05:00', '13:00']);
      page.unmount();
    }
  });

  it('brings the keyboard to the part that is chosen, and offers no part that is not there', async () => {
    const { page } = await show({ log: [] });
    await press(page, 'Handover');
    expect(document.activeElement?.id).toBe('report-handover');
    // Without it a browser brings no keyboard to a heading.
    expect(document.activeElement?.getAttribute('tabindex')).toBe('-1');
    expect(button(page, 'Shift log')).toBeUndefined();
    expect(button(page, 'Heat and energy')).toBeDefined();
  });

  it('brings the keyboard back to what opened a form that is left', async () => {
    const { page } = await show();
    for (const opens of ['Hand over…', 'Write a note…', 'Withdraw…']) {
      await press(page, opens);
      await press(page, 'Cancel');
      expect(plain(document.activeElement?.textContent ?? '').trim()).toBe(opens);
    }
  });

  it('keeps a form from being left while the server has not answered, and brings the keyboard to the answer', async () => {
    let answer: () => void = () => undefined;
    const { page } = await show();
    await press(page, 'Write a note…');
    await page.get('[name=text]').setValue('The tray is wet.');
    const { fetch } = globalThis;
    const note = { ...example.notes[0], unit: null };
    vi.stubGlobal('fetch', (path: string, options: RequestInit) =>
      path === '/api/notes'
        ? new Promise<Response>((done) => (answer = () => done(new Response(JSON.stringify(note)))))
        : fetch(path, options),
    );
    await page.get('.note-form').trigger('submit');
    await page.get('.note-form').trigger('keydown', { key: 'Escape' });
    expect(page.find('.note-form').exists()).toBe(true);
    expect(page.text()).not.toContain('On record');
    answer();
    await vi.waitFor(() => expect(page.find('.confirmed').exists()).toBe(true));
    await flushPromises();
    expect(document.activeElement).toBe(page.get('.confirmed').element);
  });

  it('hands over each newest sample of the water with its age, how and by whom, and says where none is on record', async () => {
    const { page } = await show();
    const row = plain(page.get('[data-testid=water-by-hand] tbody tr').text());
    for (const part of ['Copper', '0.05 mg/L', '2031-05-06 08:00', '6 h', 'laboratory, Ines: “sheet 12”'])
      expect(row).toContain(part);
    // What was typed within the shift is a change as well.
    expect(plain(page.get('[data-testid=changes]').text())).toContain(
      'Copper by hand, sample of 2031-05-06 08:00: 0.05 mg/L',
    );
    page.unmount();
    const without = await show({ waterByHand: [{ ...example.waterByHand[0], method: null }] });
    expect(plain(without.page.get('[data-testid=water-by-hand]').text())).toContain('method not said, Ines');
    without.page.unmount();
    expect((await show({ waterByHand: [] })).page.text()).toContain('No value that people typed is on record.');
  });

  it('tells among what changed that Ebbline was started, and that the run before did not end in order', async () => {
    const what =
      'Ebbline 0.9.0 started; the run before it did not end in order: it was killed, failed, or lost its power';
    const nothing = { unit: null, hall: null, point: null, value: null, unit_of_measure: null, by: null };
    const { page } = await show({ changes: [{ ...nothing, sequence: 90, at: noon, kind: 'program', what }] });
    const row = plain(page.get('[data-testid=changes] tbody tr').text());
    for (const part of ['Ebbline', 'did not end in order', 'the program']) expect(row).toContain(part);
  });

  it('says priority in words too, and the day of a last value that is not of the last day', async () => {
    const lastAt = '2026-02-26T11:59:00.000Z';
    const { page } = await show({ log: example.log.map((one) => ({ ...one, lastAt })) });
    expect(plain(page.get('[data-testid="stood-N1:AIR-1"]').text())).toContain('1 act now');
    expect(page.get('.report-log').text()).toContain('2026-02-26 12:59');
  });
});
