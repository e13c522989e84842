import { roles, type Role } from '@ebbline/shared/contract/people';
import type { RoleOfValue } from './open-id-settings';

/** What a provider says of someone, each by the name of OpenID Connect Core 1.0 section 5.1. */
export type Claims = Readonly<Record<string, unknown>>;

/** Longest name that the journal takes for a person. */
const longestName = 80;

/** The highest role that any value of the claim (a text, or a list of texts) has; null where none has one: no sign-in. */
export function roleOfClaims(claims: Claims, claim: string, given: readonly RoleOfValue[]): Role | null {
  const found: unknown = Object.hasOwn(claims, claim) ? claims[claim] : undefined;
  const values: readonly unknown[] = Array.isArray(found) ? found : [found];
  const reached = given.filter(({ value }) => values.includes(value)).map(({ role }) => roles.indexOf(role));
  return roles[Math.max(-1, ...reached)] ?? null;
}

/**
 * The name under which someone acts: full name, else user name, else mail address (only one that the provider has verified), else
 * what the provider calls them within itself.
 */
export function nameOfClaims(claims: Claims, subject: string): string {
  const mail = claims['email_verified'] === true ? claims['email'] : undefined;
  const names = [claims['name'], claims['preferred_username'], mail, subject];
  return names.map(plainName).find((name) => name !== '') ?? subject.slice(0, longestName);
}

/** Without characters that are not seen, which would make two names look like one. */
function plainName(name: unknown): string {
  if (typeof name !== 'string') return '';
  const seen = name.normalize('NFC').replace(/[\p{C}\p{Z}]+/gu, ' ');
  return Array.from(seen.trim()).slice(0, longestName).join('').trim();
}
