import { shapeFaults, type ShapeFault } from './shape-faults';
import { knownKeysAt } from './site-file-keys';
import { siteFileSchema, type SiteFile } from './site-file';
import { fail, ok, type Result } from '../errors/result';

export type { ShapeFault } from './shape-faults';

/** Checks keys, types and units of measure of a parsed site file; all faults at once. */
export function checkSiteFile(document: unknown): Result<SiteFile, readonly ShapeFault[]> {
  const parsed = siteFileSchema.safeParse(document);
  return parsed.success ? ok(parsed.data) : fail(shapeFaults(parsed.error.issues, document, knownKeysAt));
}
