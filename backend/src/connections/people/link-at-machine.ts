import { nameKey } from '../../access/name-key';
import type { PersonLink } from '@ebbline/shared/contract/people';
import { BackOffBook } from '../../access/back-off-book';
import type { Audit } from '../../ports/audit';
import type { Clock } from '../../ports/clock';
import { fail } from '@ebbline/shared/errors/result';
import type { Answer } from './people-desk';
import { Hashing } from './hashing';
import { newLink } from './manage-people';
import { usualCost } from './password-hash';
import { PeopleBook } from './people-book';
import { refused } from './people-fault';
import { personByKey } from './people-list';
import type { RandomBytes } from './secret';

/** Whoever may write the data folder may let anybody in: at the machine a link needs no admin, but a record. */
export function linkAtMachine(
  place: { readonly path: string; readonly audit: Audit; readonly clock: Clock; readonly random: RandomBytes },
  name: string,
): Answer<PersonLink> {
  const book = new PeopleBook(place.path, place.audit, () => undefined);
  try {
    const person = personByKey(book, nameKey(name));
    if (person === null) return unknownName(book, name);
    if (person.issuer !== null) return refused('PERSON_FOREIGN');
    if (!person.enabled)
      return fail({
        code: 'PERSON_UNKNOWN',
        message: `${person.name} is disabled. An admin has to enable them first.`,
      });
    const desk = { ...place, book, hashing: new Hashing(usualCost), backOff: new BackOffBook(), demo: false };
    const reason = `new link for ${person.name}, made at the machine itself`;
    return newLink(desk, person, { cause: 'linkMade', actor: null, station: 'this machine', reason });
  } finally {
    book.close();
  }
}

function unknownName(book: PeopleBook, name: string): ReturnType<typeof linkAtMachine> {
  const admins = [...book.people.values()].filter(({ role, enabled }) => role === 'admin' && enabled);
  const said =
    admins.length === 0
      ? 'There is no admin yet: start the program, which prints a link for the first one.'
      : `Admins are: ${admins.map((admin) => admin.name).join(', ')}.`;
  return fail({ code: 'PERSON_UNKNOWN', message: `There is nobody of the name ${name}. ${said}` });
}
