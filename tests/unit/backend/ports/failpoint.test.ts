import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, test } from 'vitest';
import { armFailpoint, failpoint, failpointNames } from '../../../../backend/src/ports/failpoint';

const backend = fileURLToPath(new URL('../../../../backend/src', import.meta.url));
afterEach(() => armFailpoint(undefined, () => undefined));

function endsAfter(setting: string | undefined, passed: readonly (typeof failpointNames)[number][]): number {
  let ends = 0;
  armFailpoint(setting, () => void (ends += 1));
  for (const name of passed) failpoint(name);
  return ends;
}

describe('a failpoint', () => {
  test('ends nothing where the environment names none', () => {
    for (const setting of [undefined, '']) expect(endsAfter(setting, failpointNames)).toBe(0);
  });

  test('ends the program at its own place and at no other', () => {
    expect(endsAfter('tail-after-commit', ['tail-before-commit', 'journal-after-commit'])).toBe(0);
    expect(endsAfter('tail-after-commit', ['tail-before-commit', 'tail-after-commit'])).toBe(1);
  });

  test('ends it the time it was told, not before', () => {
    const name = 'journal-before-commit';
    expect(endsAfter(`${name}:3`, [name, name])).toBe(0);
    expect(endsAfter(`${name}:3`, [name, name, name])).toBe(1);
  });

  test.each(['no-such-place', 'tail-after-commit:0', 'tail-after-commit:x', 'tail-after-commit:1:2'])(
    'refuses %s, with the names that there are',
    (setting) => {
      expect(() => armFailpoint(setting, () => undefined)).toThrow('tail-after-commit');
    },
  );

  test('stands at exactly one place for each name', () => {
    const files = readdirSync(backend, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
    const text = files.map((name) => readFileSync(join(backend, name), 'utf8')).join('\n');
    const places = [...text.matchAll(/\bfailpoint\('([a-z-]+)'\)/g)].map(([, name]) => name);
    expect(places.sort()).toEqual([...failpointNames].sort());
  });
});
