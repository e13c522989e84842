import type { Right, Role } from '@ebbline/shared/contract/people';
import type { PeopleDatabase } from './people-schema';
import type { Change, StoredLink, StoredPerson, StoredSession, StoredToken } from './stored';

type Value = string | number | null;

interface Table<Row> {
  readonly columns: readonly string[];
  readonly values: (row: Row) => Value[];
  readonly row: (values: Value[]) => Row;
}

/** STRICT types and CHECKs of the tables vouch for the shapes. */
const tables: {
  readonly person: Table<StoredPerson>;
  readonly link: Table<StoredLink>;
  readonly session: Table<StoredSession>;
  readonly token: Table<StoredToken>;
} = {
  person: {
    columns: [
      ...['id', 'name', 'name_key', 'role', 'enabled', 'issuer', 'subject', 'password_hash', 'added_ms'],
      'last_sign_in_ms',
    ],
    values: (row) => [
      ...[row.id, row.name, row.key, row.role, row.enabled ? 1 : 0, row.issuer, row.subject, row.passwordHash],
      ...[row.addedMs, row.lastSignInMs],
    ],
    row: ([id, name, key, role, enabled, issuer, subject, passwordHash, addedMs, lastSignInMs]) =>
      ({
        ...{ id, name, key, role: role as Role, enabled: enabled === 1, issuer, subject, passwordHash },
        ...{ addedMs, lastSignInMs },
      }) as StoredPerson,
  },
  link: {
    columns: ['digest', 'person_id', 'ends_ms'],
    values: (row) => [row.digest, row.personId, row.endsMs],
    row: ([digest, personId, endsMs]) => ({ digest, personId, endsMs }) as StoredLink,
  },
  session: {
    columns: ['digest', 'id', 'person_id', 'name', 'begun_ms', 'acted_ms', 'station'],
    values: (row) => [row.digest, row.id, row.personId, row.name, row.begunMs, row.actedMs, row.station],
    row: ([digest, id, personId, name, begunMs, actedMs, station]) =>
      ({ digest, id, personId, name, begunMs, actedMs, station }) as StoredSession,
  },
  token: {
    columns: [
      ...['digest', 'id', 'name', 'name_key', 'rights', 'added_by', 'added_ms', 'ends_ms', 'last_used_ms'],
      'withdrawn_ms',
    ],
    values: (row) => [
      ...[row.digest, row.id, row.name, row.key, JSON.stringify(row.rights), row.addedBy, row.addedMs, row.endsMs],
      ...[row.lastUsedMs, row.withdrawnMs],
    ],
    row: ([digest, id, name, key, rights, addedBy, addedMs, endsMs, lastUsedMs, withdrawnMs]) =>
      ({
        ...{ digest, id, name, key, rights: JSON.parse(String(rights)) as Right[], addedBy, addedMs, endsMs },
        ...{ lastUsedMs, withdrawnMs },
      }) as StoredToken,
  },
};

export interface PeopleStatements {
  apply(change: Change): void;
  people(): StoredPerson[];
  links(): StoredLink[];
  sessions(): StoredSession[];
  tokens(): StoredToken[];
}

/** Every statement that is run on people.db. */
export function peopleStatements(database: PeopleDatabase): PeopleStatements {
  const put = <Row>(name: string, { columns, values }: Table<Row>): ((row: Row) => void) => {
    const [key, ...others] = columns;
    const news = others.map((column) => `${column} = excluded.${column}`).join(', ');
    const statement = database.prepare(
      `INSERT INTO ${name} (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})
       ON CONFLICT (${key ?? ''}) DO UPDATE SET ${news}`,
    );
    return (row) => void statement.run(...values(row));
  };
  const all = <Row>(name: string, { columns, row }: Table<Row>): (() => Row[]) => {
    const statement = database.prepare(`SELECT ${columns.join(', ')} FROM ${name} ORDER BY rowid`).raw();
    return () => (statement.all() as Value[][]).map(row);
  };
  const putPerson = put('person', tables.person);
  const putLink = put('link', tables.link);
  const putSession = put('session', tables.session);
  const putToken = put('token', tables.token);
  const drop = {
    link: database.prepare('DELETE FROM link WHERE digest = ?'),
    session: database.prepare('DELETE FROM session WHERE digest = ?'),
    token: database.prepare('DELETE FROM token WHERE digest = ?'),
  };
  return {
    apply(change) {
      if ('drop' in change) drop[change.drop].run(change.digest);
      else if (change.put === 'person') putPerson(change.row);
      else if (change.put === 'link') putLink(change.row);
      else if (change.put === 'session') putSession(change.row);
      else putToken(change.row);
    },
    people: all('person', tables.person),
    links: all('link', tables.link),
    sessions: all('session', tables.session),
    tokens: all('token', tables.token),
  };
}
