import { afterAll, beforeAll, expect, test } from 'vitest';
import { postJson, startApp, type RunningApp } from './running-app';

let app: RunningApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.stop());

/** No JSON at all, so whoever reads it says so. */
const large = `{"text": "${'x'.repeat(2_000_000)}`;
const codeOf = async (reply: Response): Promise<unknown> => ((await reply.json()) as { code: unknown }).code;

test('a whole site file is not even read of someone who may not check one', async () => {
  const unsigned = await fetch(`${app.url}/api/site/check`, postJson(large));
  expect([unsigned.status, await codeOf(unsigned)]).toEqual([401, 'SIGN_IN_NEEDED']);
});

test('of someone who may it is, and a smaller body anywhere else', async () => {
  const signed = await app.send('/api/site/check', postJson(large));
  expect([signed.status, await codeOf(signed)]).toEqual([400, 'REQUEST_MALFORMED']);
  const elsewhere = await app.send('/api/permits', postJson(large));
  expect([elsewhere.status, await codeOf(elsewhere)]).toEqual([413, 'BODY_TOO_LARGE']);
});
