import { describe, expect, it } from 'vitest';
import { nameOfClaims, roleOfClaims } from '../../../../../backend/src/connections/open-id/identity-of-claims';

const given = [
  { value: 'plant', role: 'engineer' },
  { value: 'night', role: 'operator' },
  { value: 'night', role: 'viewer' },
] as const;

describe('roleOfClaims', () => {
  it.each([
    [['plant'], 'engineer'],
    [['night', 'plant'], 'engineer'],
    ['night', 'operator'],
    [['Plant'], null],
    ['plant night', null],
    [[], null],
    [undefined, null],
    [{ plant: true }, null],
    [[['plant']], null],
  ])('gives %j the role %s', (groups, role) => {
    expect(roleOfClaims({ groups }, 'groups', given)).toBe(role);
  });

  it('takes no claim that the provider did not send', () => {
    expect(roleOfClaims({}, 'constructor', [{ value: 'plant', role: 'admin' }])).toBeNull();
  });
});

describe('nameOfClaims', () => {
  it.each([
    [{ name: 'Ines Vidal', preferred_username: 'ines' }, 'Ines Vidal'],
    [{ name: '   ', preferred_username: 'ines' }, 'ines'],
    [{ email: 'ines@hall.example', email_verified: true }, 'ines@hall.example'],
    [{ email: 'ines@hall.example', email_verified: 'true' }, 'x-1'],
    [{ email: 'ines@hall.example' }, 'x-1'],
    [{ name: 7 }, 'x-1'],
    // A zero-width space and an override of direction are not seen.
    [{ name: 'In\u200bes\u202e\n Vidal' }, 'In es Vidal'],
    [{ name: 'Ine\u0301s' }, 'In\u00e9s'],
    [{ name: 'n'.repeat(200) }, 'n'.repeat(80)],
  ])('names %j %s', (claims, name) => {
    expect(nameOfClaims(claims, 'x-1')).toBe(name);
  });
});
