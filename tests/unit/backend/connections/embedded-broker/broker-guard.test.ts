import { describe, expect, it } from 'vitest';
import { BoundedNotes } from '../../../../../backend/src/connections/embedded-broker/bounded-notes';
import { BrokerGuard, type BrokerClaim } from '../../../../../backend/src/connections/embedded-broker/broker-guard';
import { memoryRateLimits } from '../../../../../backend/src/connections/rate-limits/memory-rate-limits';

/** Far more than one station may sign in a minute. */
const gateways = 500;
const atOnce = 18;

/** A guard whose passwords are their own hashes, checked a few at once, each when the test says so. */
function guarded() {
  let checks = 0;
  const underWay: (() => void)[] = [];
  const passwords = {
    check: (hash: string, password: string): Promise<boolean | 'later'> => {
      if (underWay.length >= atOnce) return Promise.resolve('later');
      checks += 1;
      return new Promise((resolve) => underWay.push(() => resolve(hash === password)));
    },
  };
  const users = Array.from({ length: gateways }, (_, i) => ({
    name: `gateway-${i}`,
    passwordHash: `right-${i}`,
    publish: ['hall/#'],
    subscribe: [],
  }));
  const guard = new BrokerGuard({
    users,
    ownUsers: [],
    ownClientId: 'ebbline0123456789abcdef',
    ownTopics: null,
    passwords,
    attempts: memoryRateLimits(),
    notes: new BoundedNotes(
      () => undefined,
      () => 0,
    ),
  });
  const come = (name: string, password: string) => {
    const claim: BrokerClaim = { clientId: name, station: '192.0.2.7', name, password: Buffer.from(password) };
    return guard.admit(claim);
  };
  const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
  /** All of them at once; checks end once nobody comes any more. */
  async function together(claims: readonly (readonly [string, string])[]) {
    const answers = Promise.all(claims.map(([name, password]) => come(name, password)));
    await turn();
    for (const end of underWay.splice(0)) end();
    return answers;
  }
  return { together, checks: () => checks };
}

describe('gateways behind one address', () => {
  it('are all let in after a restart, however often they are told to come again', async () => {
    const { together } = guarded();
    let outside = Array.from({ length: gateways }, (_, i) => i);
    for (let round = 0; outside.length > 0 && round < 100; round += 1) {
      const answers = await together(outside.map((i) => [`gateway-${i}`, `right-${i}`] as const));
      expect(answers).not.toContain(null);
      outside = outside.filter((_, k) => answers[k] === 'later');
    }
    expect(outside).toEqual([]);
  });

  it('are checked no more once so many passwords were wrong, but for those known as right', async () => {
    const { together, checks } = guarded();
    expect(await together([['gateway-0', 'right-0']])).not.toContain('later');
    for (let round = 0; round < 50; round += 1)
      await together(Array.from({ length: atOnce }, (_, i) => [`gateway-${i}`, `guess-${round}`] as const));
    expect(checks()).toBeGreaterThanOrEqual(120);
    expect(checks()).toBeLessThanOrEqual(1 + 120 + atOnce);
    expect(await together([['gateway-1', 'right-1']])).toEqual(['later']);
    expect(await together([['gateway-0', 'right-0']])).toMatchObject([{ name: 'gateway-0' }]);
  });
});
