import { join } from 'node:path';
import Database from 'libsql';
import { expect, onTestFinished, test } from 'vitest';
import type { Health } from '@ebbline/shared/contract/http-api';
import { adminName, testPassword } from '../../helpers/sign-in';
import { postJson, startApp } from './running-app';

test('health says that people can not be written, and stops saying so once they can; who is signed in goes on', async () => {
  const app = await startApp();
  onTestFinished(() => app.stop());
  const database = new Database(join(app.dataFolder, 'people.db'));
  onTestFinished(() => void database.close());
  const signIn = (): Promise<Response> =>
    fetch(`${app.url}/api/session/sign-in`, postJson({ name: adminName, password: testPassword }));
  const codes = async (): Promise<readonly string[]> =>
    (await app.get<Health>('/api/health')).reasons.map(({ code }) => code);
  await app.signIn.admin();
  expect(await codes()).not.toContain('PEOPLE_FAILING');

  database.exec(
    "CREATE TRIGGER refused BEFORE INSERT ON session BEGIN SELECT RAISE(ABORT, 'disk full'); END; CREATE TRIGGER refused_too BEFORE UPDATE ON session BEGIN SELECT RAISE(ABORT, 'disk full'); END;",
  );
  const refused = await signIn();
  expect([refused.status, await refused.json()]).toMatchObject([503, { code: 'PEOPLE_UNAVAILABLE' }]);
  expect(await codes()).toContain('PEOPLE_FAILING');
  expect((await app.get<Health>('/api/health')).status).toBe('degraded');

  database.exec('DROP TRIGGER refused; DROP TRIGGER refused_too;');
  expect((await signIn()).status).toBe(200);
  expect(await codes()).not.toContain('PEOPLE_FAILING');
});
