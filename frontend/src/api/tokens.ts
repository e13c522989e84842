import type { AddTokenRequest, NewToken, TokenRow } from '@ebbline/shared/contract/people';
import { newTokenSchema, tokenListSchema, tokenSchema } from '@ebbline/shared/contract/people';
import type { Result } from '@ebbline/shared/errors/result';
import { ok } from '@ebbline/shared/errors/result';
import { request } from './request';

/** The ways in of machines, ended and withdrawn ones too. */
export async function readTokens(): Promise<Result<readonly TokenRow[]>> {
  const reply = await request('/api/tokens', tokenListSchema);
  return reply.ok ? ok(reply.value.tokens) : reply;
}

/** Resolves with the secret; the server tells it once. */
export const addToken = (wish: AddTokenRequest): Promise<Result<NewToken>> =>
  request('/api/tokens', newTokenSchema, { body: wish });

export const withdrawToken = (id: string, reason: string): Promise<Result<TokenRow>> =>
  request(`/api/tokens/${encodeURIComponent(id)}/withdraw`, tokenSchema, { body: { reason } });
