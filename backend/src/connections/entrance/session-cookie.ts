import { parseCookie, stringifySetCookie } from 'cookie';

/** Over TLS no other host of the same domain can set a cookie of this name (RFC 6265bis section 4.1.3.2). */
const nameOf = (isSecure: boolean): string => (isSecure ? '__Host-ebbline-session' : 'ebbline-session');

/** The secret of the session that a browser sends along; null without one. */
export function readSessionCookie(header: string | undefined, isSecure: boolean): string | null {
  const secret = header === undefined ? undefined : parseCookie(header)[nameOf(isSecure)];
  return secret === undefined || secret === '' ? null : secret;
}

/** The value of a `Set-Cookie` header: no script reads it, no page of another site sends it along (RFC 6265bis section 5.6). */
export function writeSessionCookie(secret: string, lastsS: number, isSecure: boolean): string {
  return stringifySetCookie({
    name: nameOf(isSecure),
    value: secret,
    httpOnly: true,
    sameSite: 'strict',
    secure: isSecure,
    path: '/',
    maxAge: Math.max(0, Math.floor(lastsS)),
  });
}
