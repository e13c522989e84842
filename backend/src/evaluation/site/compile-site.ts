import { checkSiteFile } from '@ebbline/shared/contract/site-file-check';
import type { SiteFile } from '@ebbline/shared/contract/site-file';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { compileChecked, type CompileOptions } from './compile-checked';
import type { CompiledSite } from './compiled-site';
import { siteSideFaults, withoutFaulty } from './faulty-parts';
import { FaultList, type SiteFault } from './site-fault';

/** A site file that may be run. Warnings are said at start and change nothing. */
export interface CompiledSiteFile {
  readonly site: CompiledSite;
  readonly warnings: readonly SiteFault[];
}

/**
 * Compiles a parsed site file (plain objects, as YAML gives them) to slots, or tells everything that is
 * wrong with it at once: shape, units of measure, references between its parts, and physics.
 */
export function compileSite(
  document: unknown,
  derivedPointIds: CompileOptions['derivedPointIds'],
  entries: CompileOptions['entries'] = null,
): Result<CompiledSiteFile, readonly SiteFault[]> {
  const options: CompileOptions = { derivedPointIds, entries };
  const shape = checkSiteFile(document);
  if (shape.ok) {
    const faults = new FaultList();
    const warnings = new FaultList();
    const site = compileChecked(shape.value, options, faults, warnings);
    return faults.size === 0 ? ok({ site, warnings: warnings.list }) : fail(faults.list);
  }
  const rest: SiteFile | null = withoutFaulty(document, shape.fault);
  if (rest === null) return fail(shape.fault);
  const further = new FaultList();
  compileChecked(rest, options, further, new FaultList());
  return fail([...shape.fault, ...siteSideFaults(further.list, shape.fault)]);
}
