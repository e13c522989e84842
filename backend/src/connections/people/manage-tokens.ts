import { nameKey, shownName } from '../../access/name-key';
import type { AddTokenRequest, NewToken, TokenRow } from '@ebbline/shared/contract/people';
import { ok } from '@ebbline/shared/errors/result';
import { tokenById } from './callers';
import type { Doer } from './manage-people';
import type { Answer, PeopleDesk } from './people-desk';
import { refused } from './people-fault';
import { isTaken, tokenRow } from './people-list';
import { digestOf, newId, newSecret } from './secret';
import type { StoredToken } from './stored';

const dayMs = 86_400_000;

/** Tells what it is to whoever finds one where it should not be. */
const prefix = 'ebbline_';

/** A machine's way in: named, for some rights, for some days. */
export function addToken(desk: PeopleDesk, asked: AddTokenRequest, by: Doer): Answer<NewToken> {
  const { book, random, clock } = desk;
  const name = shownName(asked.name);
  const nowMs = Math.round(clock.wallMs());
  if (name === '') return refused('PERSON_NAME_MISSING');
  if (isTaken(book, name, nowMs)) return refused('PERSON_NAME_TAKEN');
  const secret = `${prefix}${newSecret(random)}`;
  const row: StoredToken = {
    ...{ digest: digestOf(secret), id: newId(random), name, key: nameKey(name) },
    ...{ rights: [...new Set(asked.rights)], addedBy: by.name, addedMs: nowMs, endsMs: nowMs + asked.days * dayMs },
    ...{ lastUsedMs: null, withdrawnMs: null },
  };
  const reason = `added the token ${name} for ${asked.days} ${asked.days === 1 ? 'day' : 'days'}: ${row.rights.join(', ')}`;
  const fault = book.commit([{ put: 'token', row }], {
    cause: 'tokenAdded',
    actor: by.name,
    station: by.station,
    reason,
  });
  return fault === null ? ok({ token: tokenRow(row), secret }) : refused(fault);
}

export function withdrawToken(desk: PeopleDesk, id: string, reason: string, by: Doer): Answer<TokenRow> {
  const { book, clock } = desk;
  const token = tokenById(desk, id);
  const nowMs = Math.round(clock.wallMs());
  if (token === null || token.withdrawnMs !== null || nowMs >= token.endsMs) return refused('TOKEN_UNKNOWN');
  const row = { ...token, withdrawnMs: nowMs };
  const said = `withdrew the token ${token.name}: ${reason}`;
  const fault = book.commit([{ put: 'token', row }], {
    cause: 'tokenWithdrawn',
    actor: by.name,
    station: by.station,
    reason: said,
  });
  return fault === null ? ok(tokenRow(row)) : refused(fault);
}
