import { createHash } from 'node:crypto';

/** So many bytes nobody has foreseen; in the program, of the operating system. */
export type RandomBytes = (count: number) => Uint8Array;

/** 256 bits: not guessed, so a plain hash of it is enough to keep (ASVS 5.0 V7.2.3 asks for at least 128). */
const secretBytes = 32;

const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64url');

export const newSecret = (random: RandomBytes): string => text(random(secretBytes));

export const newId = (random: RandomBytes): string => text(random(12));

/** How a secret is kept and found again: SHA-256 (FIPS 180-4) of its text, in hex. A look-up by it tells nothing of the secret by its time. */
export const digestOf = (secret: string): string => createHash('sha256').update(secret, 'utf8').digest('hex');

/** What a page sends beside the cookie: made from the secret, from which the secret can't be found, so nothing more is kept. */
export const csrfOf = (secret: string): string =>
  createHash('sha256').update(`csrf of ${secret}`, 'utf8').digest('base64url');
