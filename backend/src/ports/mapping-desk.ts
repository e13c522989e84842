import type { Mapping, MappingFault } from '@ebbline/shared/contract/mapping';
import type { Failure, Result } from '@ebbline/shared/errors/result';
import type { Actor } from './identity';

/** Which points what arrives under names of its own could be. Nothing of the site is changed by any of it. */
export interface MappingDesk {
  /** @param unit propose for this one alone; null: for any */
  mapping(unit: string | null): Promise<Result<Mapping, Failure<'UNIT_UNKNOWN'>>>;
  listen(filter: string, actor: Actor): Result<null, Failure<MappingFault>>;
  stop(): Promise<void>;
}

export const MAPPING_DESK = Symbol('MappingDesk');
