import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { aSite } from './fixtures/builders';
import { answerWith } from './fixtures/fake-server';
import { aSession } from './fixtures/sessions';

beforeEach(() => {
  vi.resetModules();
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const stateOf = (contentHash: string) => ({
  ...{ file: 'site.yaml', contentHash, loadedAt: '2026-03-01T12:00:00.000Z', refused: null, warnings: [] },
});

/** A page as it starts: who is signed in is not known yet. */
async function startPage(answers: Readonly<Record<string, unknown>>) {
  const asked = answerWith(answers);
  const { useSite } = await import('../../frontend/src/state/use-site');
  const { holdSession } = await import('../../frontend/src/state/use-session');
  const { site } = useSite();
  await flushPromises();
  expect(asked).toEqual([]);
  holdSession(aSession());
  await flushPromises();
  return { site, paths: () => asked.map(({ path }) => path) };
}

it('knows of which file its site is as soon as it may look, and misses no reload in its first minute', async () => {
  let inForce = 'one';
  const { site, paths } = await startPage({
    '/api/site/state': () => stateOf(inForce),
    '/api/site': () => ({ ...aSite(), name: inForce }),
  });
  expect(paths()).toEqual(['/api/site/state', '/api/site']);
  inForce = 'another';
  await vi.advanceTimersByTimeAsync(60_000);
  await flushPromises();
  expect(site.value?.name).toBe('another');
});

it('does not read again what is in force still', async () => {
  const { paths } = await startPage({ '/api/site/state': stateOf('one'), '/api/site': aSite() });
  await vi.advanceTimersByTimeAsync(120_000);
  await flushPromises();
  expect(paths().filter((path) => path === '/api/site')).toHaveLength(1);
});

it('shows the site also where its file is not told, and reads it anew once it is', async () => {
  const answers: Record<string, unknown> = { '/api/site': aSite() };
  const { site, paths } = await startPage(answers);
  expect(site.value?.name).toBe(aSite().name);
  answers['/api/site/state'] = stateOf('one');
  await vi.advanceTimersByTimeAsync(60_000);
  await flushPromises();
  expect(paths().filter((path) => path === '/api/site')).toHaveLength(2);
});
