/** Someone who may come to the embedded broker. */
export interface BrokerUser {
  readonly name: string;
  /** Argon2id in PHC form; never the password. */
  readonly passwordHash: string;
  /** Topic filters; nothing else may be sent. */
  readonly publish: readonly string[];
  /** Topic filters; only what lies within one of them may be asked for. */
  readonly subscribe: readonly string[];
}

/** Whether a password is the one of a hash. `later`: too many are being checked already. */
export interface PasswordCheck {
  check(hash: string, password: string): Promise<boolean | 'later'>;
}

/** What the embedded broker refused, since the start. */
export const brokerRefusals = ['signIn', 'publish', 'subscribe'] as const;
export type BrokerRefusal = (typeof brokerRefusals)[number];
