import { ManualClock } from '@ebbline/shared/clock/manual-clock';
import type { ViewRefusal } from '@ebbline/shared/contract/live-feed';
import { beforeEach, describe, expect, it } from 'vitest';
import { SessionEntrance } from '../../../../../backend/src/connections/entrance/session-entrance';
import { LiveFeedGateway } from '../../../../../backend/src/connections/live-feed/live-feed.gateway';
import type { KeptPeople } from '../../../../../backend/src/connections/people/create-people';
import type { LiveView } from '../../../../../backend/src/ports/live-view';
import type { BegunSession, Caller } from '../../../../../backend/src/ports/people';
import { firstAdmin, goodPassword, peopleInMemory, station } from '../../../../helpers/people-in-memory';

type Admit = (socket: FakeSocket, next: (fault?: Error) => void) => void;
type Socket = Parameters<LiveFeedGateway['handleConnection']>[0];

/** What of a socket the gateway touches. */
class FakeSocket {
  readonly id = 'of the test';
  readonly refusals: ViewRefusal[] = [];
  frames = 0;
  connected = true;
  readonly request: { readonly headers: Readonly<Record<string, string>>; readonly socket: { remoteAddress: string } };
  readonly handshake: { readonly auth: unknown };

  constructor(headers: Readonly<Record<string, string>>, auth: unknown) {
    this.request = { headers, socket: { remoteAddress: station } };
    this.handshake = { auth };
  }

  emit(event: string, told: unknown): void {
    if (event === 'refused') this.refusals.push(told as ViewRefusal);
    else this.frames++;
  }

  disconnect(): void {
    this.connected = false;
  }
}

const live = {
  refusalOf: () => null,
  frame: () => ({ screen: 'alarms' }),
  watch: () => ({ changed: () => 'values', paceMs: () => 0 }),
} as unknown as LiveView;
const counts = { joined: () => undefined, left: () => undefined, sent: () => undefined, skipped: () => undefined };
const reason = 'of the test';

/** The gateway on a driven clock, which looks every 100 ms of it. */
function gatewayFor(people: KeptPeople, clock: ManualClock, isDemo: boolean) {
  const edge = { exposed: false, stationOf: () => station, isSecure: () => false };
  const entrance = new SessionEntrance(people, edge, clock, isDemo);
  let look = (): void => undefined;
  let periodMs = 0;
  const ticker = {
    every: (ms: number, work: () => void) => {
      periodMs = ms;
      look = work;
      return { stop: () => undefined };
    },
  };
  const gateway = new LiveFeedGateway(live, ticker, clock, counts, entrance);
  let admit: Admit = () => undefined;
  gateway.afterInit({ use: (ours: Admit) => void (admit = ours) } as never);
  return {
    connect(
      headers: Readonly<Record<string, string>>,
      auth: unknown = {},
    ): { socket: FakeSocket; fault: string | null } {
      const socket = new FakeSocket(headers, auth);
      let fault: string | null = null;
      admit(socket, (said) => void (fault = said?.message ?? null));
      if (fault === null) gateway.handleConnection(socket as unknown as Socket);
      return { socket, fault };
    },
    show: (socket: FakeSocket) => gateway.show(socket as unknown as Socket, { screen: 'alarms' }),
    oneLook() {
      clock.advance(periodMs);
      look();
      return periodMs;
    },
  };
}

let clock: ManualClock;
let people: KeptPeople;
let admin: Caller;
let ines: { readonly id: string; readonly begun: BegunSession };
let feed: ReturnType<typeof gatewayFor>;

const cookieOf = ({ secret }: BegunSession) => ({ cookie: `ebbline-session=${secret}` });
const authOf = ({ caller }: BegunSession) => ({ csrf: caller.csrf });
const valueOf = <Value>(answer: { ok: true; value: Value } | { ok: false; fault: { message: string } }): Value => {
  if (!answer.ok) throw new Error(answer.fault.message);
  return answer.value;
};

beforeEach(async () => {
  clock = new ManualClock(Date.UTC(2026, 0, 5, 6));
  people = peopleInMemory({ clock });
  admin = (await firstAdmin(people)).caller;
  const { person, link } = valueOf(await people.addPerson({ name: 'Ines', role: 'engineer' }, admin, station));
  const set = { link: link.split('#')[1] ?? '', password: goodPassword };
  ines = { id: person.id, begun: valueOf(await people.setUp(set, station)) };
  feed = gatewayFor(people, clock, false);
});

describe('a socket is let in', () => {
  it('with the cookie of a session and what its page was given', () => {
    expect(feed.connect(cookieOf(ines.begun), authOf(ines.begun)).fault).toBeNull();
    expect(feed.connect(cookieOf(ines.begun)).fault).toBe('CSRF_MISSING');
    expect(feed.connect(cookieOf(ines.begun), { csrf: 'guessed' }).fault).toBe('CSRF_MISSING');
    expect(feed.connect(cookieOf(ines.begun), { csrf: { of: 'another type' } }).fault).toBe('CSRF_MISSING');
  });

  it('with a token, in the handshake or as a header', async () => {
    const asked = { name: 'wall', rights: ['look' as const], days: 1 };
    const { secret } = valueOf(await people.addToken(asked, admin, station));
    expect(feed.connect({}, { token: secret }).fault).toBeNull();
    expect(feed.connect({ authorization: `Bearer ${secret}` }).fault).toBeNull();
    expect(feed.connect({}, { token: `${secret}x` }).fault).toBe('TOKEN_REFUSED');
    const blind = { name: 'blind', rights: ['permit' as const], days: 1 };
    const without = valueOf(await people.addToken(blind, admin, station));
    expect(feed.connect({}, { token: without.secret }).fault).toBe('RIGHT_MISSING');
  });

  it('without anything on the demo site alone', () => {
    for (const auth of [{}, null, undefined, 'text', ['list']])
      expect(feed.connect({}, auth).fault).toBe('SIGN_IN_NEEDED');
    const demo = gatewayFor(peopleInMemory({ demo: true, clock }), clock, true);
    const { socket, fault } = demo.connect({});
    expect(fault).toBeNull();
    demo.oneLook();
    expect(socket.connected).toBe(true);
  });
});

describe('a socket is lost within one look of 100 ms', () => {
  const endings: Readonly<Record<string, () => Promise<unknown>>> = {
    'when its session is ended': () => people.endSession(ines.begun.caller, false, station),
    'when its person is disabled': () => people.changePerson(ines.id, { enabled: false, reason }, admin, station),
    'when its person has another role': () => people.changePerson(ines.id, { role: 'viewer', reason }, admin, station),
    'when a new link is made for its person': () => people.linkFor(ines.id, reason, admin, station),
    'when its person sets another password': () =>
      people.changePassword(ines.begun.caller, { old: goodPassword, password: 'nine willows over a kettle' }, station),
  };

  it.for(Object.entries(endings))('%s', async ([, end]) => {
    const { socket } = feed.connect(cookieOf(ines.begun), authOf(ines.begun));
    feed.show(socket);
    feed.oneLook();
    expect(socket.connected).toBe(true);
    valueOf((await end()) as { ok: true; value: unknown });
    const frames = socket.frames;
    expect(feed.oneLook()).toBe(100);
    expect(socket.connected).toBe(false);
    expect(socket.refusals.map(({ code }) => code)).toEqual(['SIGN_IN_NEEDED']);
    expect(socket.frames).toBe(frames);
  });

  it('when its token is withdrawn, and at the end of a session by time', async () => {
    const asked = { name: 'wall', rights: ['look' as const], days: 1 };
    const { token, secret } = valueOf(await people.addToken(asked, admin, station));
    const wall = feed.connect({}, { token: secret }).socket;
    const page = feed.connect(cookieOf(ines.begun), authOf(ines.begun)).socket;
    valueOf(await people.withdrawToken(token.id, reason, admin, station));
    feed.oneLook();
    expect([wall.connected, page.connected]).toEqual([false, true]);
    clock.advance(12 * 3_600_000);
    feed.oneLook();
    expect(page.connected).toBe(false);
  });

  it('and before that where it asks for anything', async () => {
    const { socket } = feed.connect(cookieOf(ines.begun), authOf(ines.begun));
    await people.endSession(ines.begun.caller, true, station);
    feed.show(socket);
    expect([socket.connected, socket.frames]).toEqual([false, 0]);
  });
});
