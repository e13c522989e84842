import { describe, expect, test } from 'vitest';
import { rights, roles } from '@ebbline/shared/contract/people';
import { rightsOfRole } from '../../../../backend/src/access/rights-of-role';

describe('the rights of a role', () => {
  test.for([
    ['viewer', 'look', true],
    ['viewer', 'acknowledge', false],
    ['operator', 'acknowledge', true],
    ['operator', 'permit', true],
    ['operator', 'measure', true],
    ['viewer', 'tryLimits', false],
    ['operator', 'shelve', true],
    ['viewer', 'note', false],
    ['operator', 'note', true],
    ['operator', 'tryLimits', true],
    ['operator', 'changeSite', false],
    ['operator', 'changeLimits', false],
    ['operator', 'outOfService', false],
    ['engineer', 'changeLimits', true],
    ['engineer', 'outOfService', true],
    ['operator', 'readAudit', false],
    ['engineer', 'changeSite', true],
    ['engineer', 'commandDemo', true],
    ['engineer', 'readAudit', true],
    ['engineer', 'managePeople', false],
    ['admin', 'managePeople', true],
  ] as const)('of a %s hold %s: %s', ([role, right, holds]) => {
    expect(rightsOfRole[role].includes(right)).toBe(holds);
  });

  test('grow from role to role, and an admin has all', () => {
    for (const [i, role] of roles.entries()) {
      const lower = roles[i - 1];
      if (lower !== undefined) expect(rightsOfRole[role]).toEqual(expect.arrayContaining([...rightsOfRole[lower]]));
      expect(new Set(rightsOfRole[role]).size).toBe(rightsOfRole[role].length);
    }
    expect([...rightsOfRole.admin].sort()).toEqual([...rights].sort());
  });
});
