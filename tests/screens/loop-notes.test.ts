import { pastUnitSchema } from '@ebbline/shared/contract/past';
import { noteRequestSchema, noteSchema } from '@ebbline/shared/contract/notes';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { aLoopFrame, anAlarmsFrame, aSite, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { plain } from './fixtures/loop-shown';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';
import { aSession } from './fixtures/sessions';

let opened: Page | null = null;
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

const note = (text: string) =>
  noteSchema.parse({
    ...{ id: 'n7', text, by: 'A. Example', station: 's', writtenAt: noon, about: noon, hall: 'east', unit: 'e7' },
    ...{ alarm: null, corrects: null, why: null, correctedBy: null, withdrawn: null },
  });

async function show(answers: Record<string, unknown>, role: 'operator' | 'viewer' = 'operator'): Promise<VueWrapper> {
  const server = new FakeServer();
  opened = await openPage(server, '/units/e7', answers, aSite(), aSession(role));
  server.connect();
  server.send(aLoopFrame());
  await flushPromises();
  return opened.page;
}
const button = (page: VueWrapper, words: string) => page.findAll('button').find((one) => one.text() === words);
const write = async (page: VueWrapper, text: string): Promise<void> => {
  await button(page, 'Write a note…')?.trigger('click');
  await page.get('.note-form [name=text]').setValue(text);
  await page.get('.note-form').trigger('submit');
  await flushPromises();
};
const sent = (): unknown[] =>
  (opened?.asked ?? []).flatMap(({ body, path }) => (path === '/api/notes' && body !== undefined ? [body] : []));

describe('a note about a unit', () => {
  it('is written on the screen of its loop, and said to be on record once the server has confirmed', async () => {
    const page = await show({ '/api/notes': note('The tray is wet.') });
    await write(page, '  The tray is wet.  ');
    expect(sent().map((body) => noteRequestSchema.parse(body))).toEqual([
      { text: 'The tray is wet.', about: null, hall: null, unit: 'e7', alarm: null, operator: 'A. Example' },
    ]);
    const said = page.get('[data-testid=loop-notes] .confirmed');
    expect(plain(said.text())).toBe('“The tray is wet.” is on record, confirmed by the server.');
    expect(document.activeElement).toBe(said.element);
    expect(page.find('.note-form').exists()).toBe(false);
  });

  it('that is refused stays in its form with the reason, and is not said to be on record', async () => {
    const problem = {
      ...{ type: 'urn:ebbline:problem:NOTE_TIME', title: '', status: 409, instance: '/', code: 'NOTE_TIME' },
      detail: 'The time lies ahead.',
    };
    const page = await show({ '/api/notes': () => new Response(JSON.stringify(problem), { status: 409 }) });
    await write(page, 'The tray is wet.');
    expect(page.get('.note-form [role=alert]').text()).toContain('The time lies ahead.');
    expect((page.get('.note-form [name=text]').element as HTMLTextAreaElement).value).toBe('The tray is wet.');
    expect(page.find('[data-testid=loop-notes] .confirmed').exists()).toBe(false);
  });

  it('leads to the notes over time, and brings the keyboard back where the form is left', async () => {
    const page = await show({});
    expect(page.get('[data-testid=loop-notes] a').attributes('href')).toBe('/trends?unit=e7');
    await button(page, 'Write a note…')?.trigger('click');
    await button(page, 'Cancel')?.trigger('click');
    await flushPromises();
    expect(document.activeElement?.textContent).toContain('Write a note…');
  });

  it('is asked of nobody who may not write one', async () => {
    const page = await show({}, 'viewer');
    await button(page, 'Write a note…')?.trigger('click');
    expect(page.get('[data-testid=loop-notes] [data-testid=who-needed]').text()).toContain('write notes');
    await page.get('.note-form [name=text]').setValue('The tray is wet.');
    await page.get('.note-form').trigger('submit');
    expect(sent()).toEqual([]);
  });

  it('is not written about a past second', async () => {
    const frame = Object.fromEntries(
      Object.entries(aLoopFrame()).filter(([key]) => !['sequence', 'broker', 'calling'].includes(key)),
    );
    const answer = pastUnitSchema.parse({
      at: '2026-03-01T02:13:07.000Z',
      now: noon,
      resolution: 'second',
      silent: null,
      notes: [],
      frame,
    });
    const server = new FakeServer();
    opened = await openPage(server, '/units/e7/past?at=2026-03-01T02:13:07Z', { '/api/past/units/e7': answer });
    server.connect();
    server.send(anAlarmsFrame([]));
    await flushPromises();
    expect(opened.page.find('.loop-aside').exists()).toBe(true);
    expect(opened.page.find('[data-testid=loop-notes]').exists()).toBe(false);
  });
});
