import { describe, expect, test } from 'vitest';
import {
  hashPassword,
  isPasswordOf,
  isWeaker,
  usualCost,
} from '../../../../../backend/src/connections/people/password-hash';

/**
 * Test values of the reference implementation that won the Password Hashing Competition (phc-winner-argon2, src/test.c, Argon2id,
 * version 0x13), from memory. The vector of RFC 9106 section 5.3 has associated data, which the library does not take.
 */
const published = [
  '$argon2id$v=19$m=256,t=2,p=1$c29tZXNhbHQ$nf65EOgLrQMR/uIPnA4rEsF5h7TKyQwu9U1bMCHGi/4',
  '$argon2id$v=19$m=256,t=2,p=2$c29tZXNhbHQ$bQk8UB/VmZZF4Oo79iDXuL5/0ttZwg2f/5U52iv1cDc',
];

describe('the hash of a password', () => {
  test.for(published)('%s is that of “password” and of no other', async (kept) => {
    expect(await isPasswordOf(kept, 'password')).toBe(true);
    expect(await isPasswordOf(kept, 'differentpassword')).toBe(false);
  });

  test('is Argon2id, no cheaper than the OWASP Password Storage Cheat Sheet asks, with a salt of its own', async () => {
    const [one, other] = [await hashPassword('kettle', usualCost), await hashPassword('kettle', usualCost)];
    expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$[\w+/]{22}\$[\w+/]{43}$/);
    expect(one).not.toBe(other);
    expect(await isPasswordOf(one, 'kettle')).toBe(true);
  });

  test('does not ask how a letter with an accent was typed', async () => {
    const kept = await hashPassword('café au lait', { memoryKib: 8, passes: 1, lanes: 1 });
    expect(await isPasswordOf(kept, 'cafe\u0301 au lait')).toBe(true);
    expect(await isPasswordOf(kept, 'cafe au lait')).toBe(false);
  });

  test.for([
    [{ memoryKib: 8, passes: 1, lanes: 1 }, false],
    [{ memoryKib: 9, passes: 1, lanes: 1 }, true],
    [{ memoryKib: 8, passes: 2, lanes: 1 }, true],
  ] as const)('is outgrown at the cost %j: %s', async ([cost, weaker]) => {
    expect(isWeaker(await hashPassword('kettle', { memoryKib: 8, passes: 1, lanes: 1 }), cost)).toBe(weaker);
  });
});
