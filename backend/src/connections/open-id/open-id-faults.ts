import type { OpenIdFault } from '../../ports/open-id';

export const unreachable: OpenIdFault = {
  code: 'OPEN_ID_UNREACHABLE',
  message:
    'The identity provider does not answer, or names itself otherwise than EBBLINE_OIDC_ISSUER; sign in by password, or try again later',
};

export const notBegun: OpenIdFault = {
  code: 'OPEN_ID_NOT_BEGUN',
  message: 'This sign-in was not begun in this browser within the last ten minutes, or was used already; sign in again',
};

export const noRole: OpenIdFault = {
  code: 'OPEN_ID_NO_ROLE',
  message:
    'The identity provider knows you, but nothing that it says of you has a role here (EBBLINE_OIDC_ROLES); ask an admin',
};

export const absent: OpenIdFault = {
  code: 'OPEN_ID_ABSENT',
  message: 'No identity provider is set (EBBLINE_OIDC_ISSUER); sign in by password',
};

/** Errors of RFC 6749 section 4.1.2.1 and OpenID Connect Core 1.0 section 3.1.2.6; any other word is not repeated. */
const known =
  /^(access_denied|server_error|temporarily_unavailable|invalid_(request|scope)|unauthorized_client|(login|consent|interaction|account_selection)_required)$/;

/** Where the provider sent the browser back with an error instead of a code. */
export function saysNo(query: string): OpenIdFault | null {
  const error = new URLSearchParams(query).get('error');
  if (error === null) return null;
  const word = known.test(error) ? ` (${error})` : '';
  return refused(`The identity provider refused the sign-in${word}; sign in again, or ask who runs it`);
}

const refused = (message: string): OpenIdFault => ({ code: 'OPEN_ID_REFUSED', message });

/** Codes of the library for an answer that never came. */
const noAnswer = /^(OAUTH_TIMEOUT|OAUTH_ABORT)$/;

/** What the library found wrong; its message may repeat what the provider sent, so only its code is told. */
export function refusal(fault: unknown): OpenIdFault {
  const code = fault instanceof Error && 'code' in fault && typeof fault.code === 'string' ? fault.code : null;
  const isNetwork = fault instanceof TypeError && fault.message === 'fetch failed';
  if (isNetwork || (code !== null && noAnswer.test(code))) return unreachable;
  const word = code !== null && /^[A-Z_]{1,60}$/.test(code) ? ` (${code})` : '';
  return refused(`What the identity provider said of you does not hold${word}; sign in again, or ask who runs it`);
}
