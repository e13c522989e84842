import { hashOfNobody, hashPassword, isPasswordOf, isWeaker, type HashCost } from './password-hash';

/** So many at once, as each takes memory and a core; so many may wait; who comes later is told to come again. */
export const hashingBounds = { atOnce: 2, waiting: 16 } as const;

/** Too many wait already. */
export const tooMany = Symbol('too many passwords are being checked');
export type TooMany = typeof tooMany;

/** Makes and checks hashes of passwords, a bounded number at once. */
export class Hashing {
  readonly #cost: HashCost;
  readonly #waiting: (() => void)[] = [];
  #running = 0;
  /** What an unknown name is checked against, so that it takes as long as a known one. */
  readonly #nobody: string;

  constructor(cost: HashCost) {
    this.#cost = cost;
    this.#nobody = hashOfNobody(cost);
  }

  hash(password: string): Promise<string | TooMany> {
    return this.#inTurn(() => hashPassword(password, this.#cost));
  }

  /** @param kept null where there is no such password: then as much is reckoned, and the answer is no */
  check(kept: string | null, password: string): Promise<boolean | TooMany> {
    return this.#inTurn(async () => {
      const isRight = await isPasswordOf(kept ?? this.#nobody, password);
      return isRight && kept !== null;
    });
  }

  /** Whether a password is to be hashed anew, as hashes cost more today. */
  isOutgrown(kept: string): boolean {
    return isWeaker(kept, this.#cost);
  }

  async #inTurn<Value>(job: () => Promise<Value>): Promise<Value | TooMany> {
    if (this.#running >= hashingBounds.atOnce) {
      if (this.#waiting.length >= hashingBounds.waiting) return tooMany;
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    } else {
      this.#running++;
    }
    try {
      return await job();
    } finally {
      const next = this.#waiting.shift();
      if (next === undefined) this.#running--;
      else next();
    }
  }
}
