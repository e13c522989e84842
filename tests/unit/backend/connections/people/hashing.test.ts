import { describe, expect, test } from 'vitest';
import { Hashing, hashingBounds, tooMany } from '../../../../../backend/src/connections/people/hashing';
import { hashPassword } from '../../../../../backend/src/connections/people/password-hash';

const cost = { memoryKib: 8, passes: 1, lanes: 1 };

describe('hashing', () => {
  test('takes a bounded number at once and in wait, turns the others away, and then takes more', async () => {
    const hashing = new Hashing(cost);
    const bound = hashingBounds.atOnce + hashingBounds.waiting;
    const asked = Array.from({ length: bound + 7 }, () => hashing.check(null, 'kettle'));
    const answers = await Promise.all(asked);
    expect(answers.filter((answer) => answer === tooMany)).toHaveLength(7);
    expect(answers.filter((answer) => answer === false)).toHaveLength(bound);
    expect(await hashing.check(null, 'kettle')).toBe(false);
  });

  test('says no for a name that is nobody’s, even to the password of nobody', async () => {
    const hashing = new Hashing(cost);
    expect(await hashing.check(null, 'nobody has this password')).toBe(false);
    expect(await hashing.check(await hashPassword('kettle', cost), 'kettle')).toBe(true);
  });

  test('goes on after a hash that is none', async () => {
    const hashing = new Hashing(cost);
    for (let i = 0; i < 5; i++) await expect(hashing.check('no hash', 'kettle')).rejects.toThrow();
    expect(await hashing.check(null, 'kettle')).toBe(false);
  });
});
