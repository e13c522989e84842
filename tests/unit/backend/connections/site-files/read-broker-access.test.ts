import { writeFileSync } from 'node:fs';
import { Readable } from 'node:stream';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { brokerPasswordCommand } from '../../../../../backend/src/connections/people/broker-password-command';
import { isPasswordOf } from '../../../../../backend/src/connections/people/password-hash';
import { readBrokerAccess } from '../../../../../backend/src/connections/site-files/read-broker-access';
import { stopAfterEach } from '../../../../helpers/stop-after';
import { temporaryFolder } from '../../../../helpers/temporary-folder';

const keep = stopAfterEach();
const hash = `$argon2id$v=19$m=19456,t=2,p=1$${'a'.repeat(22)}$${'b'.repeat(43)}`;

async function read(text: string) {
  const folder = keep(await temporaryFolder());
  const file = join(folder.path, 'access.yaml');
  writeFileSync(file, text, { mode: 0o600 });
  return readBrokerAccess(file);
}

async function command(...typed: string[]): Promise<{ code: number; said: string[]; complained: string[] }> {
  const said: string[] = [];
  const complained: string[] = [];
  const input = Readable.from(typed);
  const code = await brokerPasswordCommand(
    input,
    (line) => said.push(line),
    (line) => complained.push(line),
  );
  return { code, said, complained };
}

describe('the access file of the embedded broker', () => {
  it('names users with the topics they may send to and ask for', async () => {
    const file = await read(`users:
  - name: gateway-north
    password: ${hash}
    publish: ['hall/north/#']
  - { name: reader, password: '${hash}', subscribe: ['+/north/#', '#'] }
`);
    expect(file).toEqual({
      ok: true,
      value: [
        { name: 'gateway-north', passwordHash: hash, publish: ['hall/north/#'], subscribe: [] },
        { name: 'reader', passwordHash: hash, publish: [], subscribe: ['+/north/#', '#'] },
      ],
    });
  });

  it.for([
    ['a password in place of its hash', `users:\n  - name: a\n    password: s3cret-s3cret`, 3, 'users.0.password'],
    [
      'a hash too dear to check',
      `users:\n  - name: a\n    password: ${hash.replace('19456', '9999999')}`,
      3,
      'users.0.password',
    ],
    ['no filter', `users:\n  - name: a\n    password: ${hash}\n    publish: ['s3cret/#/b']`, 4, 'users.0.publish.0'],
    ['a name of our own', `users:\n  - name: ebbline\n    password: ${hash}`, 2, 'users.0.name'],
    [
      'a name twice',
      `users:\n  - {name: a, password: '${hash}'}\n  - {name: a, password: '${hash}'}`,
      3,
      'users.1.name',
    ],
    ['a key that is not known', `users:\n  - name: a\n    s3cret: s3cret\n    password: ${hash}`, 2, 'users.0'],
    ['nobody', 'users: []', 1, 'users'],
    ['something else', 's3cret', 1, ''],
    ['no YAML', 'users: [s3cret', 1, ''],
  ] as const)(
    'is refused with line and key where it has %s, and shows nothing of what stands there',
    async ([, text, line, key]) => {
      const file = await read(text);
      expect(file.ok ? [] : file.fault).toMatchObject([{ line, key }]);
      expect(JSON.stringify(file)).not.toMatch(/s3cret|9999999/);
    },
  );

  it('takes what the command prints, which is no password but checks one', async () => {
    const { code, said, complained } = await command('north-', 'gateway-1\nnot this');
    expect({ code, complained }).toEqual({ code: 0, complained: [] });
    const [printed = ''] = said;
    expect(said).toHaveLength(1);
    expect(printed).not.toContain('north');
    expect(await isPasswordOf(printed, 'north-gateway-1')).toBe(true);
    expect(await isPasswordOf(printed, 'north-gateway-2')).toBe(false);
    expect((await read(`users:\n  - {name: a, password: '${printed}'}`)).ok).toBe(true);
  });

  it('gets no hash of a password that is short, and takes back what was typed wrong', async () => {
    expect(await command('too-short\n')).toMatchObject({ code: 1, said: [] });
    expect(await command('')).toMatchObject({ code: 1, said: [] });
    expect(await command('north-gateway\u0003')).toMatchObject({ code: 1, said: [] });
    const { said } = await command('north-gatewaz\u007fy\n');
    expect(await isPasswordOf(said[0] ?? '', 'north-gateway')).toBe(true);
  });
});
