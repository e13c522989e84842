import { expect, test } from 'vitest';
import { limitRequests } from '../../../../../backend/src/connections/http-api/limit-requests';
import type { WebRequest, WebResponse } from '../../../../../backend/src/connections/http-api/web-types';

/** The kinds that one request was counted as. */
async function countedAs(method: string, path: string): Promise<readonly string[]> {
  const kinds: string[] = [];
  const limits = {
    waitOf: (kind: string) => {
      kinds.push(kind);
      return Promise.resolve(null);
    },
    refused: () => ({ read: 0, action: 0, signIn: 0, handshake: 0, event: 0 }),
  };
  const limit = limitRequests({ stationOf: () => '192.0.2.1' }, limits);
  await new Promise<void>((next) => {
    limit({ method, path } as WebRequest, {} as WebResponse, () => next());
  });
  return kinds;
}

test.for([
  ['POST', '/api/session/sign-in', ['signIn']],
  ['POST', '/api/session/sign-in/', ['signIn']],
  ['POST', '/API/Session/Sign-In//', ['signIn']],
  ['GET', '/api/session/open-id/start/', ['signIn']],
  ['POST', '/api/alarms/x/acknowledge', ['action']],
  ['GET', '/api/alarms', ['read']],
  ['HEAD', '/', ['read']],
  ['GET', '/api/health/alive', []],
  ['GET', '/api/health/ready/', []],
] as const)('%s %s is counted as %j, however the address is written', async ([method, path, kinds]) => {
  expect(await countedAs(method, path)).toEqual(kinds);
});
