import { satisfies } from 'semver';
import { describe, expect, test } from 'vitest';
import { lockedPackages } from './locked-packages';
import { mayShip } from './may-ship';

const packages = lockedPackages();
const named = ({ name, version, licence, node }: (typeof packages)[number]): string =>
  `${name}@${version}: ${licence ?? 'no licence'}, Node ${node ?? 'any'}`;

describe('the packages that Ebbline needs', () => {
  test('have licences that ask for no more than to be named', () => {
    const shipped = packages.filter(({ dev }) => !dev);
    expect(shipped.length).toBeGreaterThan(100);
    expect(shipped.filter((one) => !mayShip(one)).map(named)).toEqual([]);
  });

  test.for([
    ['GPL-3.0-only', false],
    ['MIT AND GPL-3.0-only', false],
    ['(MIT OR GPL-3.0-only)', true],
    ['MPL-2.0', false],
    ['UNLICENSED', false],
    [null, false],
    ['Apache-2.0', true],
  ] as const)('under %s may ship: %s', ([licence, may]) => {
    expect(mayShip({ name: 'planted', licence })).toBe(may);
  });

  test.for(['20.19.0', '22.13.0', '24.11.0'])('say of themselves that they run on Node %s', (version) => {
    const refusing = packages.filter(({ node }) => node !== null && !satisfies(version, node));
    expect(refusing.map(named)).toEqual([]);
  });
});
