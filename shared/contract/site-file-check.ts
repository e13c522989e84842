import { knownKeysAt } from './site-file-keys';
import { siteFileSchema, type SiteFile } from './site-file';
import { fail, ok, type Result } from '../errors/result';

/** One thing wrong with the shape of a site file: where, and what is expected there. */
export interface ShapeFault {
  readonly path: readonly (string | number)[];
  readonly message: string;
}

const asPath = (path: readonly PropertyKey[]): (string | number)[] =>
  path.map((part) => (typeof part === 'number' ? part : String(part)));

/** Checks keys, types and units of measure of a parsed site file; all faults at once. */
export function checkSiteFile(document: unknown): Result<SiteFile, readonly ShapeFault[]> {
  const parsed = siteFileSchema.safeParse(document);
  if (parsed.success) return ok(parsed.data);
  const faults: ShapeFault[] = [];
  for (const issue of parsed.error.issues) {
    const path = asPath(issue.path);
    if (issue.code === 'unrecognized_keys') {
      const known = knownKeysAt(path).join(', ');
      for (const key of issue.keys)
        faults.push({ path: [...path, key], message: `unknown key; known here are ${known}; correct or remove it` });
    } else if (issue.code === 'invalid_key') {
      faults.push({ path, message: `this id is not allowed: ${issue.issues[0]?.message ?? 'invalid'}` });
    } else if (issue.code === 'invalid_type' && valueAt(document, path) === undefined) {
      faults.push({ path, message: `is missing; ${lower(issue.message)}` });
    } else {
      faults.push({ path, message: lower(issue.message) });
    }
  }
  return fail(faults);
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
