import type { ClosePermitRequest, OpenPermitRequest, Permit } from '@ebbline/shared/contract/permit';
import type { Result } from '@ebbline/shared/errors/result';
import { closePermit, openPermit } from '../api/permits';
import type { OneAct } from './use-acting';
import { useActing } from './use-acting';

export interface PermitOptions {
  /** Default: the server. */
  readonly open?: (wish: OpenPermitRequest) => Promise<Result<Permit>>;
  readonly close?: (permit: string, wish: ClosePermitRequest) => Promise<Result<Permit>>;
}

/** Opening a permit on a unit. */
export const useOpenPermit = (options: PermitOptions = {}): OneAct<OpenPermitRequest, Permit> =>
  useActing(options.open ?? openPermit);

/** Closing one permit. */
export function useClosePermit(permit: () => string, options: PermitOptions = {}): OneAct<ClosePermitRequest, Permit> {
  const close = options.close ?? closePermit;
  return useActing((wish: ClosePermitRequest) => close(permit(), wish));
}
