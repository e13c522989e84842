import { fail } from '@ebbline/shared/errors/result';
import type { OpenId } from '../../ports/open-id';
import { absent } from './open-id-faults';

/** Where no provider is set. */
export const noOpenId: OpenId = {
  label: () => null,
  begin: () => Promise.resolve(fail(absent)),
  finish: () => Promise.resolve(fail(absent)),
};
