import { shownName } from '../../access/name-key';
import type { AddPersonRequest, ChangePersonRequest, PersonLink, PersonRow } from '@ebbline/shared/contract/people';
import { ok } from '@ebbline/shared/errors/result';
import type { AuditEntry } from '../../ports/audit';
import type { Caller } from '../../ports/people';
import { linkEndsAfterMs } from './link-in-force';
import type { Answer, PeopleDesk } from './people-desk';
import { refused } from './people-fault';
import { demoSessionsUnder, dropLinksOf, endSessionsOf, isLastAdmin, isTaken, personRow } from './people-list';
import { digestOf, newId, newSecret } from './secret';
import { newPerson } from './set-up';
import type { Change, StoredPerson } from './stored';

/** Where a link leads: the secret stands after #, which no browser sends to a server (RFC 9110 section 7.1). */
export const linkPath = (secret: string): string => `/set-up#${secret}`;

/** Whoever did it, as the journal knows them. */
export interface Doer {
  readonly name: string;
  readonly station: string;
}
export const doer = ({ name }: Caller, station: string): Doer => ({ name, station });

export function addPerson(desk: PeopleDesk, { name: typed, role }: AddPersonRequest, by: Doer): Answer<PersonLink> {
  const name = shownName(typed);
  const nowMs = Math.round(desk.clock.wallMs());
  if (name === '') return refused('PERSON_NAME_MISSING');
  if (isTaken(desk.book, name, nowMs)) return refused('PERSON_NAME_TAKEN');
  const person = newPerson(newId(desk.random), name, role, nowMs);
  return withLink(
    desk,
    person,
    demoSessionsUnder(desk.book, name),
    recordOf('personAdded', by, `added ${name} as ${role}`),
  );
}

/** A new link for someone whose password is lost; the old one and all sessions end. */
export function linkFor(desk: PeopleDesk, id: string, reason: string, by: Doer): Answer<PersonLink> {
  const person = desk.book.people.get(id);
  if (person === undefined) return refused('PERSON_UNKNOWN');
  if (person.issuer !== null) return refused('PERSON_FOREIGN');
  if (isLastAdmin(desk.book, person)) return refused('PERSON_LAST_ADMIN');
  return newLink(desk, person, recordOf('linkMade', by, `new link for ${person.name}: ${reason}`));
}

export function newLink(desk: PeopleDesk, person: StoredPerson, entry: AuditEntry): Answer<PersonLink> {
  const { book } = desk;
  const gone = [...endSessionsOf(book, person.id), ...dropLinksOf(book, person.id)];
  return withLink(desk, { ...person, passwordHash: null }, gone, entry);
}

export function changePerson(
  desk: PeopleDesk,
  id: string,
  { role, enabled, reason }: ChangePersonRequest,
  by: Doer,
): Answer<PersonRow> {
  const person = desk.book.people.get(id);
  if (person === undefined) return refused('PERSON_UNKNOWN');
  const row = { ...person, role: role ?? person.role, enabled: enabled ?? person.enabled };
  if (row.role !== person.role && person.issuer !== null) return refused('PERSON_FOREIGN');
  if ((row.role !== 'admin' || !row.enabled) && isLastAdmin(desk.book, person)) return refused('PERSON_LAST_ADMIN');
  const said = [
    ...(row.role === person.role ? [] : [`role ${person.role} to ${row.role}`]),
    ...(row.enabled === person.enabled ? [] : [row.enabled ? 'enabled' : 'disabled']),
  ];
  if (said.length === 0) return ok(personRow(person));
  const gone = row.enabled ? [] : [...endSessionsOf(desk.book, id), ...dropLinksOf(desk.book, id)];
  const entry = recordOf('personChanged', by, `${person.name}, ${said.join(', ')}: ${reason}`);
  const fault = desk.book.commit([{ put: 'person', row }, ...gone], entry);
  return fault === null ? ok(personRow(row)) : refused(fault);
}

function withLink(
  desk: PeopleDesk,
  person: StoredPerson,
  changes: readonly Change[],
  entry: AuditEntry,
): Answer<PersonLink> {
  const secret = newSecret(desk.random);
  const endsMs = Math.round(desk.clock.wallMs()) + linkEndsAfterMs;
  const link = { digest: digestOf(secret), personId: person.id, endsMs };
  const fault = desk.book.commit([{ put: 'person', row: person }, ...changes, { put: 'link', row: link }], entry);
  if (fault !== null) return refused(fault);
  return ok({ person: personRow(person), link: linkPath(secret), endsAt: new Date(endsMs).toISOString() });
}

const recordOf = (cause: AuditEntry['cause'], { name, station }: Doer, reason: string): AuditEntry => ({
  ...{ cause, actor: name, station, reason },
});
