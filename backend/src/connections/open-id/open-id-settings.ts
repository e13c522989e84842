import type { Role } from '@ebbline/shared/contract/people';

export interface OpenIdSettings {
  /** As the provider names itself, to the letter; https, or http on this machine. */
  readonly issuer: string;
  readonly clientId: string;
  /** Null: a client without a secret, held by PKCE alone. Never printed. */
  readonly clientSecret: string | null;
  readonly scope: string;
  /** Which claim says who may do what. */
  readonly claim: string;
  readonly roles: readonly RoleOfValue[];
  /** Origin under which browsers of others reach this program; null: this machine's only. */
  readonly publicUrl: string | null;
}

export interface RoleOfValue {
  readonly value: string;
  readonly role: Role;
}
