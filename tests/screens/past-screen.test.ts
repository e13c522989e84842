import { hallTrailsSchema } from '@ebbline/shared/contract/hall-trails';
import { pastHallSchema, pastUnitSchema } from '@ebbline/shared/contract/past';
import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { aHallFrame, aLine, aLoopFrame, aPermit, anAlarm, anAlarmsFrame, aReading } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';
import { pastMarks as marks } from './fixtures/past-marks';
import { moment, pictureOf } from './fixtures/past-picture';

let opened: Page | null = null;
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
  waits = false;
});

/** Ten hours before noon; the site is in a zone one hour ahead. */
const at = '2026-03-01T02:13:07.000Z';
const secondOf = (path: string): string => new URL(path, 'http://test').searchParams.get('at') ?? '';
const hallAt = (asked: string) =>
  pastHallSchema.parse({
    ...moment(asked),
    frame: pictureOf(aHallFrame([aLine('e1', { name: `E1 at ${asked.slice(11, 19)}` }), aLine('e7')])),
  });

let waits = false;
/** @returns the hour up to a minute, of which the one before is seen; or never an answer, where the test says so */
function trailsAt(minute: string): unknown {
  if (waits) return new Promise(() => undefined);
  const cells = (pa: number) => [...Array<null>(58).fill(null), pa, null];
  const ofUnit = (unit: string) => ({ unit, lowestPa: cells(30_000), highestPa: cells(90_000) });
  return hallTrailsSchema.parse({ hall: 'east', minute, trails: [ofUnit('e1'), ofUnit('e7')] });
}

async function show(address: string, answers: Readonly<Record<string, unknown>> = {}): Promise<Page> {
  const server = new FakeServer();
  opened = await openPage(server, address, {
    '/api/past/halls/east': (path: string) => hallAt(secondOf(path)),
    '/api/past/marks': marks,
    ...answers,
  });
  server.connect();
  server.send(anAlarmsFrame([]));
  await flushPromises();
  return opened;
}
const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();
const banner = ({ page }: Page): string => plain(page.get('[data-testid=past-banner]').text());
const slider = ({ page }: Page) => page.get<HTMLInputElement>('[data-testid=past-slider]');
const askedAt = ({ asked }: Page): string[] =>
  asked.filter(({ path }) => path.startsWith('/api/past/halls/east?')).map(({ path }) => secondOf(path));
const settle = async (): Promise<void> => {
  await vi.advanceTimersByTimeAsync(200);
  await flushPromises();
};

describe('a past hour of a hall', () => {
  it('says which second it shows, how long ago it was, that it is not live, and leads back in one click', async () => {
    const shown = await show(`/halls/east/past?at=${at}`);
    expect(banner(shown)).toBe(
      'Past: 2026-03-01 03:13:07, 9 h ago Not live: nothing here can be acted on. Back to live',
    );
    expect(shown.page.get('.past-back').attributes('href')).toBe('/halls/east');
    expect(shown.page.text()).toContain('E1 at 02:13:07');
    expect(shown.page.get('[data-testid=loop-e7] a').attributes('href')).toBe('/units/e7/past?at=2026-03-01T02:13:07Z');
  });

  it('draws over each bar the hour that ended then, read once a minute and never of another time', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const shown = await show(`/halls/east/past?at=${at}&step=10`, {
      '/api/past/halls/east/trails': (path: string) => trailsAt(secondOf(path)),
    });
    await flushPromises();
    const asked = (): string[] =>
      shown.asked.filter(({ path }) => path.includes('/trails')).map(({ path }) => secondOf(path));
    const trail = (): string => shown.page.find('[data-testid=strip-e1-trail]').attributes('d') ?? '';
    expect(asked()).toEqual(['2026-03-01T02:13:00.000Z']);
    // A minute that was read, and the one under way, of which the moment tells.
    expect(trail().match(/V/g)).toHaveLength(4);
    expect(shown.page.text()).toContain('the last hour minute by minute');
    const go = async (key: string, times: number): Promise<void> => {
      for (let i = 0; i < times; i += 1) {
        await slider(shown).trigger('keydown', { key });
        await flushPromises();
      }
      // First the moment, then its hour.
      await settle();
      await settle();
    };
    await go('ArrowRight', 3);
    expect(asked()).toHaveLength(1);
    expect(trail().match(/V/g)).toHaveLength(4);
    waits = true;
    await go('ArrowRight', 3);
    expect(asked().at(-1)).toBe('2026-03-01T02:14:00.000Z');
    // While that is read the hour goes on; of a time further away nothing is drawn until it is known.
    expect(trail()).not.toBe('');
    await go('PageDown', 3);
    expect(shown.page.find('[data-testid=strip-e1-trail]').exists()).toBe(false);
    expect(shown.page.text()).toContain('reading the hour before of each loop…');
    expect(shown.asked.filter(({ path }) => path.startsWith('/api/halls/'))).toEqual([]);
  });

  it('offers nothing that acts on the plant, nor what is known of now only', async () => {
    const { page } = await show(`/halls/east/past?at=${at}`);
    const main = page.get('.past');
    expect(main.findAll('a').map((link) => link.attributes('href'))).not.toContainEqual(
      expect.stringMatching(/value=|alarms|trends/),
    );
    expect(main.findAll('.past-picture button')).toEqual([]);
  });

  it('begins ten minutes ago where the address names no time', async () => {
    const shown = await show('/halls/east/past');
    expect(askedAt(shown)).toEqual(['2026-03-01T11:50:00Z']);
    expect(shown.router.currentRoute.value.query).toEqual({ at: '2026-03-01T11:50:00Z' });
  });

  it('moves by arrow and page keys, and says the time to who can not see the scale', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const shown = await show(`/halls/east/past?at=${at}&step=60`);
    expect(slider(shown).attributes('aria-valuetext')).toBe('2026-03-01 03:13:07');
    const go = async (key: string): Promise<string> => {
      await slider(shown).trigger('keydown', { key });
      await settle();
      return askedAt(shown).at(-1) ?? '';
    };
    expect(await go('ArrowRight')).toBe('2026-03-01T02:14:07Z');
    expect(await go('ArrowLeft')).toBe('2026-03-01T02:13:07Z');
    expect(await go('PageUp')).toBe('2026-03-01T02:23:07Z');
    expect(await go('PageDown')).toBe('2026-03-01T02:13:07Z');
    // Beyond the end of the scale, which follows by an hour.
    for (let i = 0; i < 5; i += 1) await go('PageUp');
    expect(slider(shown).attributes('aria-valuetext')).toBe('2026-03-01 04:03:07');
    expect(Number(slider(shown).element.value)).toBe(187);
  });

  it('goes back to the usual scale and step from others, and keeps what else the address says', async () => {
    const { page, router } = await show(`/halls/east/past?at=${at}&span=21600&step=60&more=kept`);
    for (const text of ['1 h', '10 s']) {
      await page
        .findAll('button')
        .find((one) => one.text() === text)
        ?.trigger('click');
      await flushPromises();
    }
    expect(router.currentRoute.value.query).toEqual({ at: '2026-03-01T02:13:07Z', more: 'kept' });
    expect(page.get('.past-more summary').text()).toBe('Scale 1 h, step 10 s, another time');
  });

  it('shows the place of the second that it holds once the thumb is let go in a time that is still to come', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const shown = await show('/halls/east/past?at=2026-03-01T11:59:55Z&span=21600');
    const { element } = slider(shown);
    const held = element.value;
    expect(shown.page.text()).toContain('Past: 2026-03-01 12:59:55');
    element.value = element.max;
    await slider(shown).trigger('input');
    await settle();
    await slider(shown).trigger('change');
    await settle();
    expect([element.value, slider(shown).attributes('aria-valuetext')]).toEqual([held, '2026-03-01 12:59:55']);
  });

  it('goes to the alarm before and to the next one, past those that followed from another', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const shown = await show(`/halls/east/past?at=${at}`);
    const press = async (text: string): Promise<string> => {
      await shown.page
        .findAll('button')
        .find((one) => one.text() === text)
        ?.trigger('click');
      await settle();
      return askedAt(shown).at(-1) ?? '';
    };
    expect(await press('Next alarm')).toBe('2026-03-01T02:20:30Z');
    expect(await press('Alarm before')).toBe('2026-03-01T02:05:00Z');
    const before = shown.page.findAll('button').find((one) => one.text() === 'Alarm before');
    expect(before?.attributes('disabled')).toBeDefined();
  });

  it('marks alarms by shape and colour on the scale and by words in a list, and where nothing was recorded', async () => {
    const { page } = await show(`/halls/east/past?at=${at}`);
    expect(page.findAll('.past-mark')).toHaveLength(3);
    expect(page.findAll('.past-mark.follows')).toHaveLength(1);
    expect(page.findAll('.past-gap')).toHaveLength(1);
    expect(page.findAll('.past-list li').map((line) => plain(line.text()))).toEqual([
      '03:05:00 1 E7 · act now: Case 0, others followed from it',
      '03:05:01 2 E7 · act soon: Case 1, followed from another',
      '03:20:30 3 E7 · look into it: Case 2',
      '03:21:00 E7 · condition gone: Case 3',
      '03:40:00 nothing was recorded until 03:50:00',
    ]);
  });

  it('never shows one second as another while it reads: it says of when the picture is, and what is read', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    let answer: (value: Response) => void = () => undefined;
    const shown = await show(`/halls/east/past?at=${at}`, {});
    vi.stubGlobal('fetch', () => new Promise<Response>((resolve) => (answer = resolve)));
    await slider(shown).trigger('keydown', { key: 'ArrowRight' });
    await settle();
    expect(banner(shown)).toContain('Past: 2026-03-01 03:13:07');
    expect(banner(shown)).toContain('Reading 2026-03-01 03:13:17…');
    expect(shown.page.get('.past-picture').attributes('aria-busy')).toBe('true');
    const json = { 'content-type': 'application/json' };
    answer(new Response(JSON.stringify(hallAt('2026-03-01T02:13:17Z')), { headers: json }));
    await flushPromises();
    expect(banner(shown)).toContain('Past: 2026-03-01 03:13:17, 9 h ago');
    expect(banner(shown)).not.toContain('Reading');
    expect(shown.page.text()).toContain('E1 at 02:13:17');
  });

  it('shows nothing where there is no answer, and why', async () => {
    const problem = {
      type: 'urn:ebbline:problem:PAST_BEFORE_RECORDS',
      title: '',
      status: 404,
      detail: 'Nothing was recorded here at or before that time.',
      instance: '/',
      code: 'PAST_BEFORE_RECORDS',
    };
    const refusal = (): Response => new Response(JSON.stringify(problem), { status: 404 });
    const { page } = await show(`/halls/east/past?at=${at}`, { '/api/past/halls/east': refusal });
    expect(page.get('.past [role=alert]').text()).toContain('Nothing was recorded here at or before that time.');
    expect(page.find('[data-testid=loop-e1]').exists()).toBe(false);
  });

  it('says that it shows a minute where only minutes are kept, and lets time go by in minutes', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
    const minute = (path: string) => ({ ...hallAt(`${secondOf(path).slice(0, 16)}:00Z`), resolution: 'minute' });
    const shown = await show(`/halls/east/past?at=${at}`, { '/api/past/halls/east': minute });
    expect(banner(shown)).toContain('Past: minute of 2026-03-01 03:13:00, 9 h ago');
    expect(banner(shown)).toContain('Means of this minute: its seconds are no longer kept.');
    const press = (text: string) =>
      shown.page
        .findAll('button')
        .find((one) => one.text() === text)
        ?.trigger('click');
    await press('10 min');
    await press('Go by');
    await vi.advanceTimersByTimeAsync(1500);
    await flushPromises();
    expect(askedAt(shown).at(-1)).toBe('2026-03-01T02:23:07Z');
    await press('Hold');
  });

  it('tells from when to when nothing was recorded', async () => {
    const silent = { from: '2026-03-01T02:00:00.000Z', to: '2026-03-01T02:30:00.000Z' };
    const { page } = await show(`/halls/east/past?at=${at}`, { '/api/past/halls/east': { ...hallAt(at), silent } });
    expect(plain(page.get('[data-testid=past-silent]').text())).toContain(
      'Nothing was recorded here since 2026-03-01 03:00:00, until 2026-03-01 03:30:00.',
    );
  });

  it('lets time go by as fast as asked, and never ahead of what was read', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
    const shown = await show(`/halls/east/past?at=${at}`);
    const press = (text: string) =>
      shown.page
        .findAll('button')
        .find((one) => one.text() === text)
        ?.trigger('click');
    await press('60×');
    await press('Go by');
    await vi.advanceTimersByTimeAsync(2500);
    await flushPromises();
    expect(askedAt(shown)).toEqual(
      [at, '2026-03-01T02:14:07Z', '2026-03-01T02:15:07Z'].map((one) => one.replace('.000', '')),
    );
    await press('Hold');
    await vi.advanceTimersByTimeAsync(3000);
    expect(askedAt(shown)).toHaveLength(3);
  });
});

describe('a past hour of a loop', () => {
  it('draws the loop as it stood, with its alarms and permits and nothing to act on', async () => {
    const frame = aLoopFrame({
      points: [aReading('supply.temperature', 36.1, 'Cel', { age: 41 })],
      alarms: [anAlarm('e7:AIR-1', { unit: 'e7' })],
      permits: [aPermit('e7-r1', { unit: 'e7' })],
    });
    const answer = pastUnitSchema.parse({ ...moment(at), frame: pictureOf(frame) });
    const { page } = await show(`/units/e7/past?at=${at}`, { '/api/past/units/e7': answer });
    expect(plain(page.get('[data-testid=past-banner]').text())).toContain('Past: 2026-03-01 03:13:07, 9 h ago');
    expect(page.get('.past-back').attributes('href')).toBe('/units/e7');
    expect(plain(page.get('[data-testid="point-supply.temperature"]').text())).toContain('41 s');
    expect(page.find('[data-testid="alarm-e7:AIR-1"]').exists()).toBe(true);
    expect(page.text()).not.toMatch(/Acknowledge|Open a permit|Close the permit|Pressure-rise test/);
    expect(page.findAll('.past-picture button')).toEqual([]);
  });
});
