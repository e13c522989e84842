import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

import type { Caller } from '../../ports/people';

export interface Attempt {
  readonly returnAddress: string;
  readonly verifier: string;
  readonly nonce: string;
  /** Who was signed in with that browser when it began. */
  readonly before: Caller | null;
}

/** How long someone may take at the provider. */
export const attemptSeconds = 600;
/** So many at once; the oldest goes first, so that whoever begins many takes no room without end. */
const most = 1000;

/** Sign-ins that have begun and not come back: each is used once, and by the browser alone that began it. */
export class SignInAttempts {
  readonly #begun = new Map<
    string,
    { readonly attempt: Attempt; readonly browser: Buffer; readonly sinceMs: number }
  >();

  /** Returns the secret that the browser keeps. */
  add(state: string, attempt: Attempt, nowMs: number): string {
    const secret = randomBytes(32).toString('base64url');
    for (const [oldest, { sinceMs }] of this.#begun) {
      if (this.#begun.size < most && nowMs - sinceMs < attemptSeconds * 1000) break;
      this.#begun.delete(oldest);
    }
    this.#begun.set(state, { attempt, browser: digest(secret), sinceMs: nowMs });
    return secret;
  }

  /** Null: unknown, used, too old, or begun by another browser (whose attempt then stays). */
  take(state: string, secret: string, nowMs: number): Attempt | null {
    const found = this.#begun.get(state);
    if (found === undefined || !timingSafeEqual(found.browser, digest(secret))) return null;
    this.#begun.delete(state);
    return nowMs - found.sinceMs < attemptSeconds * 1000 ? found.attempt : null;
  }
}

const digest = (secret: string): Buffer => createHash('sha256').update(secret, 'utf8').digest();
