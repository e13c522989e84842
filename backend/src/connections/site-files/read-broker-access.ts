import { readFileSync } from 'node:fs';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { z } from 'zod';
import { isTopicFilter } from '../../access/topic-filter';
import type { BrokerUser } from '../../ports/broker-access';
import type { LineFault } from './line-fault';
import { readYaml } from './read-yaml';

const FILE_LIMIT_BYTES = 1_048_576;
/** PHC string of argon2id (RFC 9106), as `npm run broker:password` prints it; at most 256 MiB and 10 passes to check. */
const argon2id = /^\$argon2id\$v=19\$m=(\d+),t=(\d+),p=(\d+)\$[A-Za-z0-9+/]{22,}\$[A-Za-z0-9+/]{43,}$/;
const isCheckable = (hash: string): boolean => {
  const [, memoryKib, passes, lanes] = argon2id.exec(hash) ?? [];
  return memoryKib !== undefined && Number(memoryKib) <= 262_144 && Number(passes) <= 10 && Number(lanes) <= 16;
};

const filters = z
  .array(
    z.string().refine(isTopicFilter, 'is no topic filter: + and # stand for whole levels, # last (MQTT 3.1.1, 4.7)'),
  )
  .max(1000);

const accessSchema = z.strictObject({
  users: z
    .array(
      z.strictObject({
        name: z
          .string()
          .regex(/^[A-Za-z0-9._@-]{1,64}$/, 'has 1 to 64 letters, digits, or . _ @ -')
          .refine((name) => !/^ebbline(-simulator)?$/.test(name), 'is the name of Ebbline itself; take another'),
        password: z.string().refine(isCheckable, 'is no hash; make one by npm run broker:password'),
        publish: filters.default([]),
        subscribe: filters.default([]),
      }),
    )
    .min(1, 'is empty: then nobody could come')
    .max(1000),
});

/** Reads who may come to the embedded broker. Faults by line and key, never with what stands there: it may be a password. */
export function readBrokerAccess(path: string): Result<readonly BrokerUser[], readonly LineFault[]> {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unreadable';
    return refuse(1, '', `the file cannot be read (${code}); check its name and who may read it`);
  }
  if (bytes.length > FILE_LIMIT_BYTES) return refuse(1, '', `the file is longer than ${FILE_LIMIT_BYTES} bytes`);
  const yaml = readYaml(bytes.toString('utf8'));
  if (!yaml.ok) return refuse(yaml.fault[0]?.line ?? 1, '', 'this is not YAML; correct it there or just above');
  const checked = accessSchema.safeParse(yaml.value.value);
  if (!checked.success)
    return fail(
      checked.error.issues.map(({ path: at, message, code }) => ({
        line: yaml.value.lineOf(at.map((part) => (typeof part === 'number' ? part : String(part)))),
        key: at.join('.'),
        message: code === 'custom' || code === 'invalid_format' ? message : messageOf(code),
      })),
    );
  const users = checked.data.users.map(({ password, ...user }) => ({ ...user, passwordHash: password }));
  const twice = users.findIndex(({ name }, i) => users.some((one, before) => before < i && one.name === name));
  if (twice !== -1) return refuse(yaml.value.lineOf(['users', twice]), `users.${twice}.name`, 'is there twice');
  return ok(users);
}

const refuse = (line: number, key: string, message: string): Result<never, readonly LineFault[]> =>
  fail([{ line, key, message }]);

/** The library's own words may quote what stands there. */
function messageOf(code: string): string {
  switch (code) {
    case 'unrecognized_keys':
      return 'has keys that are not known; known are users: name, password, publish, subscribe';
    case 'too_small':
      return 'is empty: then nobody could come';
    case 'too_big':
      return 'has too many entries';
    default:
      return 'is missing or of another kind: users is a list of name, password, publish and subscribe';
  }
}
