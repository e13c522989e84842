import type { z } from 'zod';

/** One thing wrong with the shape of a file that people write: where, and what is expected there. */
export interface ShapeFault {
  readonly path: readonly (string | number)[];
  readonly message: string;
}

const asPath = (path: readonly PropertyKey[]): (string | number)[] =>
  path.map((part) => (typeof part === 'number' ? part : String(part)));

/** Every fault that the check of a shape found, in words for the writer of the file. `knownKeysAt` names the keys of a place. */
export function shapeFaults(
  issues: readonly z.core.$ZodIssue[],
  document: unknown,
  knownKeysAt: (path: readonly (string | number)[]) => readonly string[],
): ShapeFault[] {
  return issues.flatMap((issue): ShapeFault[] => {
    const path = asPath(issue.path);
    if (issue.code === 'unrecognized_keys') {
      const message = `unknown key; known here are ${knownKeysAt(path).join(', ')}; correct or remove it`;
      return issue.keys.map((key) => ({ path: [...path, key], message }));
    }
    if (issue.code === 'invalid_key')
      return [{ path, message: `this id is not allowed: ${issue.issues[0]?.message ?? 'invalid'}` }];
    const missing = issue.code === 'invalid_type' && valueAt(document, path) === undefined;
    return [{ path, message: `${missing ? 'is missing; ' : ''}${lower(issue.message)}` }];
  });
}

const lower = (message: string): string => message.replace(/^Invalid input: /, '').replace(/^Invalid option: /, '');

function valueAt(document: unknown, path: readonly (string | number)[]): unknown {
  let value = document;
  for (const part of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<string | number, unknown>)[part];
  }
  return value;
}
