import { describe, test } from 'vitest';
import { needsMark, type Requirement, requiredNames, type Requirements } from './probe-requirements';

/** Set by the test config after the one probe; workers inherit it. */
export const foundVariable = 'EBBLINE_TEST_FOUND';

/** Path of what was found, or null. A test that works either way may ask; only `suiteNeeding` may skip. */
export function found(name: Requirement): string | null {
  return requirements()[name].path;
}

/** For what is looked for only by the test that needs it, since looking is dear. */
export function foundNow(name: Requirement, path: string): void {
  const before = requirements();
  process.env[foundVariable] = JSON.stringify({ ...before, [name]: { ...before[name], path } });
}

/** The path, inside a suite that needs it. */
export function pathOf(name: Requirement): string {
  const path = found(name);
  if (path === null)
    throw new Error(`${name} is not here: ${requirements()[name].bring}; use suiteNeeding(['${name}'], …)`);
  return path;
}

/**
 * A suite whose tests need something outside the project. Where it is absent the tests are counted as not
 * run and the report says what would bring it; where `EBBLINE_TEST_REQUIRE` names it, its absence fails.
 */
export function suiteNeeding(needs: readonly Requirement[], title: string, body: () => void): void {
  const absent = needs.filter((name) => found(name) === null);
  const required = absent.filter((name) => requiredNames(process.env['EBBLINE_TEST_REQUIRE']).includes(name));
  if (required.length > 0) {
    describe(title, () => {
      test(`finds ${required.join(' and ')}`, () => {
        throw new Error(
          required.map((name) => `${name} is required but absent: ${requirements()[name].bring}`).join('\n'),
        );
      });
    });
    return;
  }
  describe.skipIf(absent.length > 0)(absent.length > 0 ? `${title} ${needsMark(absent)}` : title, body);
}

export function requirements(): Requirements {
  const found = process.env[foundVariable];
  if (found === undefined) throw new Error('run tests through tests/vitest.config.ts: it probes what is here');
  return JSON.parse(found) as Requirements;
}
