/** Faults after which what is known of who is signed in may no longer be true. */
const doubtful: ReadonlySet<string> = new Set(['SIGN_IN_NEEDED', 'CSRF_MISSING', 'RIGHT_MISSING', 'ACTOR_DIFFERS']);

let csrf: string | null = null;
let onDoubt: () => void = () => undefined;

/** What every action carries so that no other page can make one in this person's name; null without a session. */
export const csrfOfSession = (): string | null => csrf;

/** Keeps it for the requests to come; it stands nowhere else. */
export function holdCsrf(next: string | null): void {
  csrf = next;
}

/** @param listener told when the server refuses something because of who asks, or from where */
export function whenSessionDoubted(listener: () => void): void {
  onDoubt = listener;
}

/** Looks at the code of a refusal. */
export function noteRefusal(code: string): void {
  if (doubtful.has(code)) onDoubt();
}
