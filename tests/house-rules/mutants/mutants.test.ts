import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { planted } from '../../mutants/mutant';
import { fallbackTests, mutants } from '../../mutants/mutants';
import { projectFolder } from '../files/project-files';

/** The pure rooms, and the sums of energy, which know no clock either. */
const reckoning = [
  'shared/',
  'backend/src/evaluation/',
  'backend/src/access/',
  'backend/src/runner/energy/add-unit.ts',
];

test('there are at least 24 planted faults, each of its own name and in a room that reckons', () => {
  expect(mutants.length).toBeGreaterThanOrEqual(24);
  expect(new Set(mutants.map(({ id }) => id)).size).toBe(mutants.length);
  expect(mutants.filter(({ file }) => !reckoning.some((room) => file.startsWith(room)))).toEqual([]);
});

test.for(mutants)(
  '$id stands in its file exactly once, and planting it changes the file',
  ({ file, text, becomes }) => {
    const source = readFileSync(join(projectFolder, file), 'utf8');
    const changed = planted(source, { text, becomes });
    expect(changed, `${file} no longer holds exactly once: ${text}`).not.toBeNull();
    expect(changed).not.toBe(source);
  },
);

test('every test that is to find a fault is there', () => {
  const named = [...mutants.flatMap(({ tests }) => tests), ...fallbackTests];
  expect(named.filter((path) => !existsSync(join(projectFolder, 'tests', path)))).toEqual([]);
});

test('a text that is missing or stands twice is not planted', () => {
  const fault = { text: 'a + b', becomes: 'a - b' };
  expect(planted('c = a + b;', fault)).toBe('c = a - b;');
  expect(planted('c = a - b;', fault)).toBeNull();
  expect(planted('a + b; a + b', fault)).toBeNull();
});
