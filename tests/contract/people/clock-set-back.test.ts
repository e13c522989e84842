import { describe, expect, test } from 'vitest';
import { ManualClock } from '@ebbline/shared/clock/manual-clock';
import { firstAdmin, goodPassword, ListedAudit, peopleInMemory, station } from '../../helpers/people-in-memory';

const minuteMs = 60_000;
const dayMs = 86_400_000;

/** People of a machine whose clock can be set. */
async function withAda() {
  const manual = new ManualClock(Date.UTC(2026, 0, 5, 6));
  let stepMs = 0;
  const clock = { wallMs: () => manual.wallMs() + stepMs, monotonicMs: () => manual.monotonicMs() };
  const audit = new ListedAudit();
  const people = peopleInMemory({ clock, audit });
  return { people, audit, ada: await firstAdmin(people), step: (ms: number) => void (stepMs += ms) };
}

describe('where the clock is set back by days', () => {
  test('a session that began before is over, and the journal says why', async () => {
    const { people, audit, ada, step } = await withAda();
    step(-8 * dayMs);
    expect(people.sessionOf(ada.secret, true)).toBeNull();
    expect(people.isInForce(ada.caller)).toBe(false);
    people.tend();
    expect(audit.entries.at(-1)).toMatchObject({
      cause: 'sessionEnded',
      reason: 'session of Ada ended, its times lie ahead of the clock, which was set back',
    });
    step(8 * dayMs);
    expect(people.sessionOf(ada.secret, true)).toBeNull();
  });

  test('a session that began in time but was last used ahead of it is over', async () => {
    const { people, ada, step } = await withAda();
    step(10 * minuteMs);
    expect(people.sessionOf(ada.secret, true)).not.toBeNull();
    step(-10 * minuteMs);
    expect(people.sessionOf(ada.secret, true)).toBeNull();
  });

  test.for([
    [5 * minuteMs, true],
    [8 * dayMs, false],
  ] as const)('by %d ms, a token and a link that were made before let somebody in: %s', async ([backMs, letsIn]) => {
    const { people, ada, step } = await withAda();
    const asked = { name: 'gateway', rights: ['look' as const], days: 30 };
    const token = await people.addToken(asked, ada.caller, station);
    const made = await people.addPerson({ name: 'Ines', role: 'operator' }, ada.caller, station);
    if (!token.ok || !made.ok) throw new Error('neither was made');
    const machine = people.tokenOf(token.value.secret);
    if (machine === null) throw new Error('the token is not in force');
    step(-backMs);
    expect(people.tokenOf(token.value.secret) !== null).toBe(letsIn);
    expect(people.isInForce(machine)).toBe(letsIn);
    const link = made.value.link.replace(/^\/set-up#/, '');
    expect((await people.setUp({ link, password: goodPassword }, station)).ok).toBe(letsIn);
  });

  test('a link that was made before is not good again once its day has come', async () => {
    const { people, ada, step } = await withAda();
    const made = await people.addPerson({ name: 'Ines', role: 'operator' }, ada.caller, station);
    if (!made.ok) throw new Error(made.fault.message);
    step(-8 * dayMs);
    people.tend();
    step(8 * dayMs);
    const link = made.value.link.replace(/^\/set-up#/, '');
    expect((await people.setUp({ link, password: goodPassword }, station)).ok).toBe(false);
  });
});
