import type { SessionState } from '@ebbline/shared/contract/people';
import type { ComputedRef, ShallowRef } from 'vue';
import { computed, shallowReadonly, shallowRef } from 'vue';
import { holdCsrf, whenSessionDoubted } from '../api/entry-marks';
import { readSession } from '../api/session';

const session = shallowRef<SessionState | null>(null);
/** Whose session ended while this page showed it; null once someone is signed in, or on a page that began without. */
const endedOf = shallowRef<string | null>(null);
/** null: not known yet. */
const mayLook = computed(() => {
  if (session.value === null) return null;
  const { person, ways } = session.value;
  // The demo site lets people look without a sign-in wherever one click would sign them in.
  return person === null ? ways.demo : person.rights.includes('look');
});
const everyMs = 60_000;
const retryMs = 2000;
let reading: Promise<void> | null = null;
/** Counts what was held: an answer that was asked for before says nothing newer. */
let held = 0;

export interface KnownSession {
  /** As the server said it last; null until it has. */
  readonly session: Readonly<ShallowRef<SessionState | null>>;
  readonly endedOf: Readonly<ShallowRef<string | null>>;
  readonly mayLook: ComputedRef<boolean | null>;
}

/** Who is signed in on this page. One copy for the whole page. */
export const useSession = (): KnownSession => ({
  session: shallowReadonly(session),
  endedOf: shallowReadonly(endedOf),
  mayLook,
});

/** The name under which this page acts; empty where nobody is signed in, which the server refuses. */
export const actor = (): string => session.value?.person?.name ?? '';

/** Puts what the server said of the session. */
export function holdSession(next: SessionState | null): void {
  const before = session.value?.person ?? null;
  if (next !== null) endedOf.value = next.person === null ? (before?.name ?? endedOf.value) : null;
  held += 1;
  holdCsrf(next?.csrf ?? null);
  session.value = next;
}

/** Forgets that someone was signed in: what they looked at goes. */
export function forgetEnded(): void {
  endedOf.value = null;
}

/**
 * Asks the server who is signed in. What is known stays where it does not answer.
 * @param acts true where a person has done something: it puts off the end by idling
 */
export async function renewSession(acts = false): Promise<void> {
  if (reading !== null) await reading;
  if (reading === null || acts) reading = read(acts);
  await reading;
}

async function read(acts: boolean): Promise<void> {
  const before = held;
  const reply = await readSession(acts);
  if (reply.ok && before === held) holdSession(reply.value);
  reading = null;
}

/** Keeps the session known for as long as the page is open. Called once at start. */
export function startSession(): void {
  let acted = false;
  const note = (): void => {
    acted = true;
  };
  for (const event of ['pointerdown', 'keydown']) document.addEventListener(event, note, { passive: true });
  const renew = async (): Promise<void> => {
    const acts = acted;
    acted = false;
    await renewSession(acts);
    setTimeout(() => void renew(), session.value === null ? retryMs : everyMs);
  };
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void renewSession();
  });
  whenSessionDoubted(() => void renewSession());
  void renew();
}
