import { parseCookie, stringifySetCookie } from 'cookie';

/** Of its own beside that of the session, which a provider's page must not send along; this one must come back from there. */
const nameOf = (isSecure: boolean): string => (isSecure ? '__Secure-ebbline-open-id' : 'ebbline-open-id');

export function readOpenIdCookie(header: string | undefined, isSecure: boolean): string | null {
  const secret = header === undefined ? undefined : parseCookie(header)[nameOf(isSecure)];
  return secret === undefined || secret === '' ? null : secret;
}

/** The value of a `Set-Cookie` header: sent along when the provider leads the browser back, and never by a form or a script of others. */
export function writeOpenIdCookie(secret: string, lastsS: number, isSecure: boolean): string {
  return stringifySetCookie({
    name: nameOf(isSecure),
    value: secret,
    httpOnly: true,
    sameSite: 'lax',
    secure: isSecure,
    path: '/api/session/open-id',
    maxAge: lastsS,
  });
}
