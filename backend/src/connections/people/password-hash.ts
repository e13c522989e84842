import { hash, hashSync, parseOptions, verify, type Options } from '@node-rs/argon2';

export interface HashCost {
  readonly memoryKib: number;
  readonly passes: number;
  readonly lanes: number;
}

/** Argon2id at the first of the settings that the OWASP Password Storage Cheat Sheet lists: 19 MiB, 2 passes, 1 lane. */
export const usualCost: HashCost = { memoryKib: 19_456, passes: 2, lanes: 1 };

/** One form of each password, however it was typed (NIST SP 800-63B section 3.1.1.2: NFKC or NFKD). */
const oneForm = (password: string): string => password.normalize('NFKC');

/** Argon2id (RFC 9106) in PHC form, with 16 bytes of salt of the operating system. */
export const hashPassword = (password: string, cost: HashCost): Promise<string> =>
  hash(oneForm(password), argonOptions(cost));

/** What an unknown name is checked against: as dear as any, and made once, at the start. */
export const hashOfNobody = (cost: HashCost): string => hashSync('nobody has this password', argonOptions(cost));

const argonOptions = ({ memoryKib, passes, lanes }: HashCost): Options => ({
  ...{ memoryCost: memoryKib, timeCost: passes, parallelism: lanes, outputLen: 32 },
});

export const isPasswordOf = (kept: string, password: string): Promise<boolean> => verify(kept, oneForm(password));

/** Whether a hash costs less than one that is made today. */
export function isWeaker(kept: string, cost: HashCost): boolean {
  const { memoryCost, timeCost, parallelism } = parseOptions(kept);
  return memoryCost < cost.memoryKib || timeCost < cost.passes || parallelism < cost.lanes;
}
