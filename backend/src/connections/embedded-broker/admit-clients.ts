import type { AedesOptions, AuthenticateError, Client } from 'aedes';
import type { BrokerGuard, Grant } from './broker-guard';
import type { FirstHearing } from './first-hearing';
import { ownNames } from './own-users';

/** From where a connection comes; told by whoever took it. */
export type StationOf = (connection: Client['conn']) => string;

/** What each client that was let in may do. */
export interface Admission {
  readonly authenticate: NonNullable<AedesOptions['authenticate']>;
  /** Undefined: nobody that was let in. */
  grantOf(client: Client | null): Grant | undefined;
}

/** MQTT 3.1.1, table 3.1: return codes of CONNACK. */
const IDENTIFIER_REJECTED = 2;
const SERVER_UNAVAILABLE = 3;
const NOT_AUTHORIZED = 5;

export function admitClients(guard: BrokerGuard, stationOf: StationOf, hearing: FirstHearing): Admission {
  const grants = new WeakMap<Client, Grant>();
  /** Under which user each client id is connected. */
  const userOfId = new Map<string, { readonly name: string | null }>();

  /** Null: let in. Another user may not throw a client out by taking its id [MQTT-3.1.4-2]. */
  async function refusalOf(client: Client, name: string | undefined, password: Uint8Array | undefined) {
    const { id: clientId, conn } = client;
    const grant = await guard.admit({ clientId, station: stationOf(conn), name, password });
    if (grant === null) return NOT_AUTHORIZED;
    if (grant === 'later') return SERVER_UNAVAILABLE;
    if (grant.name !== ownNames.backend && !(await hearing.wait())) return SERVER_UNAVAILABLE;
    const same = userOfId.get(clientId);
    if (same !== undefined && same.name !== grant.name) return IDENTIFIER_REJECTED;
    grants.set(client, grant);
    const mine = { name: grant.name };
    userOfId.set(clientId, mine);
    const leave = (): void => {
      if (userOfId.get(clientId) === mine) userOfId.delete(clientId);
    };
    if (conn.destroyed) leave();
    else conn.once('close', leave);
    return null;
  }

  return {
    grantOf: (client) => (client === null ? undefined : grants.get(client)),
    authenticate(client, name, password, let_) {
      const answer = (code: number | null): void => {
        if (code === null) let_(null, true);
        else let_(notLetIn(code), false);
      };
      refusalOf(client, name, password).then(answer, () => answer(SERVER_UNAVAILABLE));
    },
  };
}

/** The package's codes are an enum by declaration only: no value of it is offered. */
function notLetIn(returnCode: number): AuthenticateError {
  const error: unknown = Object.assign(new Error('not let in'), { returnCode });
  return error as AuthenticateError;
}
