import type { AedesOptions, Client } from 'aedes';
import { admitClients, type StationOf } from './admit-clients';
import type { BrokerGuard } from './broker-guard';
import type { BrokerLimits } from './broker-limits';
import type { FirstHearing } from './first-hearing';
import { RetainedRoom } from './retained-room';

/** Longer ones are cut off before they take memory. */
const CLIENT_ID_LENGTH = 256;
const CONNECT_WITHIN_MS = 10_000;
/** Topics that are the broker's own (MQTT 3.1.1, section 4.7.2). */
const RESERVED = '$';

/**
 * What the broker asks before it lets something in, keeps it, or hands it on.
 * @param ownClientId ours, which alone has a session that outlives its connection, and is waited for
 */
export function boundedOptions(
  limits: BrokerLimits,
  ownClientId: string,
  guard: BrokerGuard,
  stationOf: StationOf,
  hearing: FirstHearing,
): AedesOptions {
  const room = new RetainedRoom(limits);
  const admission = admitClients(guard, stationOf, hearing);
  return {
    maxClientsIdLength: CLIENT_ID_LENGTH,
    connectTimeout: CONNECT_WITHIN_MS,
    maxInflightInbound: limits.exactlyOnceUnderWay,
    // Nothing is queued for clients that are away: to them each connection is a new session.
    preConnect(_client, packet, let_) {
      if (packet.clientId !== ownClientId) packet.clean = true;
      let_(null, true);
    },
    authenticate: admission.authenticate,
    authorizePublish(client, packet, let_) {
      if (packet.topic.startsWith(RESERVED)) {
        let_(new Error('topics that begin with $ are the broker’s own'));
        return;
      }
      const grant = admission.grantOf(client);
      // The connection is closed, as a positive answer would be a lie [MQTT-3.3.5-2].
      if (grant === undefined || !guard.mayPublish(grant, packet.topic)) {
        let_(new Error('not a topic of this client'));
        return;
      }
      if (packet.retain) {
        // A copy: the payload is a piece of all that came with it, which would be kept as well.
        packet.payload = Buffer.from(packet.payload);
        packet.retain = room.takes(packet.topic, packet.payload.length);
      }
      let_(null);
    },
    authorizeSubscribe(client, subscription, let_) {
      const grant = admission.grantOf(client);
      const may = grant !== undefined && guard.maySubscribe(grant, subscription.topic);
      const more = client.id === ownClientId || subscriptionsOf(client) < limits.subscriptionsOfClient;
      let_(null, may && more ? subscription : null);
    },
    authorizeForward(client, packet) {
      if (client.id === ownClientId || client.conn.writableLength < limits.unsentBytes) return packet;
      client.conn.destroy(new Error('this client does not take what it asked for'));
      return null;
    },
  };
}

const subscriptionsOf = (client: Client): number =>
  Object.keys((client as Client & { readonly subscriptions?: object }).subscriptions ?? {}).length;
