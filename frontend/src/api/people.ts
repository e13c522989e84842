import type { AddPersonRequest, ChangePersonRequest, PersonLink, PersonRow } from '@ebbline/shared/contract/people';
import { personLinkSchema, personListSchema, personSchema } from '@ebbline/shared/contract/people';
import type { Result } from '@ebbline/shared/errors/result';
import { ok } from '@ebbline/shared/errors/result';
import { request } from './request';

const pathOf = (id: string): string => `/api/people/${encodeURIComponent(id)}`;

/** Everyone who may sign in or could once. */
export async function readPeople(): Promise<Result<readonly PersonRow[]>> {
  const reply = await request('/api/people', personListSchema);
  return reply.ok ? ok(reply.value.people) : reply;
}

/** Resolves with the link by which this person sets a password; the server tells it once. */
export const addPerson = (wish: AddPersonRequest): Promise<Result<PersonLink>> =>
  request('/api/people', personLinkSchema, { body: wish });

export const changePerson = (id: string, wish: ChangePersonRequest): Promise<Result<PersonRow>> =>
  request(`${pathOf(id)}/change`, personSchema, { body: wish });

/** Ends the password of this person and resolves with a link to set another. */
export const renewLink = (id: string, reason: string): Promise<Result<PersonLink>> =>
  request(`${pathOf(id)}/link`, personLinkSchema, { body: { reason } });
