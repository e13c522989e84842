import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import type { BrokerRefusal, BrokerUser, PasswordCheck } from '../../ports/broker-access';
import type { AttemptLimits } from '../../ports/rate-limits';
import { covers } from '../../access/topic-filter';
import type { BoundedNotes } from './bounded-notes';
import { ownNames, type OwnUser } from './own-users';

/** What a client shows of itself. */
export interface BrokerClaim {
  readonly clientId: string;
  readonly station: string;
  readonly name: string | undefined;
  readonly password: Uint8Array | undefined;
}

/** What someone who was let in may do. */
export type Grant = Pick<BrokerUser, 'publish' | 'subscribe'> & { readonly name: string | null };

export interface GuardSettings {
  /** Null: whoever reaches the broker is let in, for all topics. */
  readonly users: readonly BrokerUser[] | null;
  /** Of this program, with passwords drawn at the start. */
  readonly ownUsers: readonly OwnUser[];
  /** Under which we connect ourselves: nobody else may, or they would have our session. */
  readonly ownClientId: string;
  /** A filter of topics that nobody else may write, whatever their list says; null: there are none. */
  readonly ownTopics: string | null;
  readonly passwords: PasswordCheck;
  readonly attempts: AttemptLimits;
  readonly notes: BoundedNotes;
}

const anyone: Grant = { name: null, publish: ['#'], subscribe: ['#'] };

/** Who is let in to the embedded broker, and to which topics. Counts what it refuses. */
export class BrokerGuard {
  readonly refused: Record<BrokerRefusal, number> = { signIn: 0, publish: 0, subscribe: 0 };
  /** Passwords that were right, by user, as a keyed hash: gateways that come back cost no argon2. */
  private readonly known = new Map<string, Buffer>();
  private readonly key = randomBytes(32);

  constructor(private readonly settings: GuardSettings) {}

  /** Null: not let in. `later`: too many come at once. */
  async admit(claim: BrokerClaim): Promise<Grant | null | 'later'> {
    const { users, ownUsers, ownClientId } = this.settings;
    const own = ownUsers.find(({ name }) => name === claim.name);
    const grant = await (own !== undefined
      ? this.own(own, claim)
      : claim.clientId === ownClientId
        ? null
        : users === null
          ? anyone
          : this.listed(users, claim));
    if (grant === null) this.refuse('signIn', `MQTT: a client at ${claim.station} was not let in: name or password.`);
    return grant;
  }

  mayPublish(grant: Grant, topic: string): boolean {
    const { ownTopics } = this.settings;
    const ours = ownTopics !== null && covers(ownTopics, topic);
    if (ours && grant.name !== ownNames.backend) {
      this.refuse('publish', `MQTT: ${who(grant)} sent to a topic of alarms, which Ebbline alone writes.`);
      return false;
    }
    if (grant.publish.some((filter) => covers(filter, topic))) return true;
    this.refuse('publish', `MQTT: ${who(grant)} sent to a topic that its list in the access file does not have.`);
    return false;
  }

  maySubscribe(grant: Grant, filter: string): boolean {
    if (grant.name === null || grant.subscribe.some((allowed) => covers(allowed, filter))) return true;
    this.refuse('subscribe', `MQTT: ${who(grant)} asked for topics that its list in the access file does not have.`);
    return false;
  }

  private own(own: OwnUser, { password }: BrokerClaim): Grant | null {
    return password !== undefined && timingSafeEqual(this.mark(own.password), this.mark(password)) ? own : null;
  }

  private async listed(users: readonly BrokerUser[], claim: BrokerClaim): Promise<Grant | null | 'later'> {
    const { name, password, station } = claim;
    const { attempts, passwords } = this.settings;
    if (name === undefined || password === undefined) return null;
    const user = users.find((one) => one.name === name);
    const mark = this.mark(password);
    const before = this.known.get(name);
    if (user !== undefined && before !== undefined && timingSafeEqual(before, mark)) return user;
    if ((await attempts.waitNow('signIn', station)) !== null) return 'later';
    // An unknown name costs as much time as a known one.
    const hash = user?.passwordHash ?? users[0]?.passwordHash;
    if (hash === undefined) return null;
    const right = await passwords.check(hash, Buffer.from(password).toString('utf8'));
    if (right === 'later') return 'later';
    if (!right || user === undefined) {
      // Wrong ones alone count: all gateways of a plant may stand behind one address and come back together. What is let
      // through beyond the limit meanwhile is bounded by how many passwords are checked at once.
      await attempts.waitOf('signIn', station);
      return null;
    }
    this.known.set(name, mark);
    return user;
  }

  private readonly mark = (password: string | Uint8Array): Buffer =>
    createHmac('sha256', this.key).update(password).digest();

  private refuse(what: BrokerRefusal, line: string): void {
    this.refused[what] += 1;
    this.settings.notes.note(what, line);
  }
}

/** A name of the access file, or of this program; what an unknown client calls itself is never told. */
const who = ({ name }: Grant): string => (name === null ? 'a client' : `“${name}”`);
