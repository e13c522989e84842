import { roles, type Role } from '@ebbline/shared/contract/people';
import { isLoopbackHost } from './is-loopback';
import { readUrl, type Fault } from './read-variable';

/** A provider at which people may sign in. */
export interface OpenIdEnvironment {
  readonly issuer: string;
  readonly clientId: string;
  /** Never printed. */
  readonly clientSecret: string | null;
  readonly scope: string;
  readonly claim: string;
  readonly roles: readonly { readonly value: string; readonly role: Role }[];
}

type Variables = Readonly<Record<string, string | undefined>>;

/** For the list of names that are known; EBBLINE_OIDC_CLIENT_SECRET is among the secrets. */
export const openIdVariables: readonly string[] = [
  'EBBLINE_OIDC_ISSUER',
  'EBBLINE_OIDC_CLIENT_ID',
  'EBBLINE_OIDC_CLIENT_SECRET',
  'EBBLINE_OIDC_SCOPE',
  'EBBLINE_OIDC_ROLES',
];

/** Null where no variable of them is set. What is set in part is a fault: someone believes that it works. */
export function readOpenId(variables: Variables, faults: Fault[]): OpenIdEnvironment | null {
  const value = (name: string): string | null => ((variables[name] ?? '') === '' ? null : (variables[name] ?? null));
  if (openIdVariables.every((name) => value(name) === null)) return null;
  const needed = (variable: string, what: string): string => {
    const text = value(variable);
    if (text === null) faults.push({ variable, message: `is missing: ${what}` });
    return text ?? '';
  };
  const issuer = needed('EBBLINE_OIDC_ISSUER', 'the address of the identity provider, as it names itself');
  if (issuer !== '') checkIssuer(issuer, faults);
  const clientId = needed('EBBLINE_OIDC_CLIENT_ID', 'the name under which the identity provider knows Ebbline');
  const text = needed('EBBLINE_OIDC_ROLES', 'without it nobody would have a role, and so nobody could sign in');
  const read = text === '' ? null : rolesOf(text);
  if (text !== '' && read === null)
    faults.push({
      variable: 'EBBLINE_OIDC_ROLES',
      message: `must be a claim and who has which role, such as "groups; night shift=operator; plant=engineer" (roles: ${roles.join(', ')})`,
    });
  const scope = value('EBBLINE_OIDC_SCOPE') ?? 'openid profile email';
  if (!scope.split(' ').includes('openid'))
    faults.push({ variable: 'EBBLINE_OIDC_SCOPE', message: 'must hold openid, such as "openid profile email"' });
  return {
    issuer,
    clientId,
    clientSecret: value('EBBLINE_OIDC_CLIENT_SECRET'),
    scope,
    ...(read ?? { claim: '', roles: [] }),
  };
}

/** What a provider says over a network without TLS anyone may change. */
function checkIssuer(issuer: string, faults: Fault[]): void {
  const read = readUrl('EBBLINE_OIDC_ISSUER', issuer, ['https:', 'http:'], faults);
  if (read === null) return;
  const { protocol, hostname, search, hash, username, password } = new URL(read);
  const variable = 'EBBLINE_OIDC_ISSUER';
  if (protocol === 'http:' && !isLoopbackHost(hostname.replace(/^\[|\]$/g, '')))
    faults.push({ variable, message: 'must begin with https://; http is for a provider on this machine only' });
  if (`${search}${hash}${username}${password}` !== '')
    faults.push({ variable, message: 'must be without name, password, ? and #' });
}

/** `claim; value=role; value=role`; a value may hold = but no ; */
function rolesOf(text: string): Pick<OpenIdEnvironment, 'claim' | 'roles'> | null {
  const [claim = '', ...parts] = text.split(';').map((part) => part.trim());
  const given = parts
    .filter((part) => part !== '')
    .map((part) => {
      const at = part.lastIndexOf('=');
      const role = roles.find((name) => name === part.slice(at + 1).trim());
      return { value: at < 0 ? '' : part.slice(0, at).trim(), role };
    });
  const whole = given.flatMap(({ value, role }) => (value === '' || role === undefined ? [] : [{ value, role }]));
  const fits = claim !== '' && !claim.includes('=') && whole.length > 0 && whole.length === given.length;
  return fits ? { claim, roles: whole } : null;
}
