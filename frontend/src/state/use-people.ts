import type {
  AddPersonRequest,
  AddTokenRequest,
  ChangePersonRequest,
  NewToken,
  PersonLink,
  PersonRow,
  TokenRow,
} from '@ebbline/shared/contract/people';
import { addPerson, changePerson, readPeople, renewLink } from '../api/people';
import { addToken, readTokens, withdrawToken } from '../api/tokens';
import type { OneAct } from './use-acting';
import { useActing } from './use-acting';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

const everyMs = 15_000;

/** Everyone who may sign in or could once. */
export const usePeople = (): Polled<readonly PersonRow[]> => usePolled(readPeople, { everyMs });

export const useAddPerson = (): OneAct<AddPersonRequest, PersonLink> => useActing(addPerson);

/** Another role, or no sign-in any more, or again one. */
export const useChangePerson = (id: () => string): OneAct<ChangePersonRequest, PersonRow> =>
  useActing((wish: ChangePersonRequest) => changePerson(id(), wish));

/** A link to set another password, for a reason. */
export const useRenewLink = (id: () => string): OneAct<string, PersonLink> =>
  useActing((reason: string) => renewLink(id(), reason));

/** The ways in of machines. */
export const useTokens = (): Polled<readonly TokenRow[]> => usePolled(readTokens, { everyMs });

export const useAddToken = (): OneAct<AddTokenRequest, NewToken> => useActing(addToken);

/** Withdraws a token for a reason. */
export const useWithdrawToken = (id: () => string): OneAct<string, TokenRow> =>
  useActing((reason: string) => withdrawToken(id(), reason));
