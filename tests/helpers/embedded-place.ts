import { BoundedNotes } from '../../backend/src/connections/embedded-broker/bounded-notes';
import { brokerLimits } from '../../backend/src/connections/embedded-broker/broker-limits';
import type { BrokerPlace } from '../../backend/src/connections/embedded-broker/embedded-broker';

interface Wanted extends Partial<Omit<BrokerPlace, 'access'>> {
  readonly access?: Partial<BrokerPlace['access']>;
}

/** Where the program's own broker stands: on a free port of 127.0.0.1 and open to all, but for what is wanted otherwise. */
export const embeddedPlace = ({ access, ...place }: Wanted = {}): BrokerPlace => ({
  host: '127.0.0.1',
  port: 0,
  portSet: false,
  certificate: null,
  heardWithinMs: null,
  limits: brokerLimits(65_536),
  ...place,
  access: {
    users: null,
    ownClientId: 'ebbline0123456789abcdef',
    ownTopics: null,
    passwords: { check: () => Promise.resolve(false) },
    attempts: { waitNow: () => Promise.resolve(null), waitOf: () => Promise.resolve(null) },
    notes: new BoundedNotes(
      () => undefined,
      () => 0,
    ),
    ...access,
  },
});
