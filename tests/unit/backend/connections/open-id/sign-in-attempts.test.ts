import { expect, it } from 'vitest';
import { SignInAttempts } from '../../../../../backend/src/connections/open-id/sign-in-attempts';

const attempt = { returnAddress: 'http://127.0.0.1:8080/', verifier: 'v', nonce: 'n', before: null };

it('gives an attempt back once, to the browser that began it, within ten minutes', () => {
  const attempts = new SignInAttempts();
  const secret = attempts.add('a', attempt, 0);
  expect(attempts.take('a', `${secret}x`, 1)).toBeNull();
  expect(attempts.take('b', secret, 1)).toBeNull();
  expect(attempts.take('a', secret, 599_999)).toBe(attempt);
  expect(attempts.take('a', secret, 599_999)).toBeNull();
  expect(attempts.take('b', attempts.add('b', attempt, 0), 600_000)).toBeNull();
});

it('holds a thousand: the oldest makes way, and takes no other with it', () => {
  const attempts = new SignInAttempts();
  const secrets = Array.from({ length: 1001 }, (_, i) => attempts.add(`s${i}`, attempt, i));
  expect(attempts.take('s0', secrets[0] ?? '', 1001)).toBeNull();
  expect(attempts.take('s1', secrets[1] ?? '', 1001)).toBe(attempt);
  expect(attempts.take('s1000', secrets[1000] ?? '', 1001)).toBe(attempt);
});
