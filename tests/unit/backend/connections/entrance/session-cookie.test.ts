import { describe, expect, it } from 'vitest';
import { bearerToken } from '../../../../../backend/src/connections/entrance/bearer-token';
import { readSessionCookie, writeSessionCookie } from '../../../../../backend/src/connections/entrance/session-cookie';

describe('the cookie of a session', () => {
  it('is bound to this host by its name where it comes over TLS', () => {
    // RFC 6265bis section 4.1.3.2: Secure, Path=/, no Domain.
    expect(writeSessionCookie('s3cret', 60.9, true)).toBe(
      '__Host-ebbline-session=s3cret; Max-Age=60; Path=/; HttpOnly; Secure; SameSite=Strict',
    );
    expect(readSessionCookie('__Host-ebbline-session=s3cret', true)).toBe('s3cret');
  });

  it('of the other name counts for nothing', () => {
    expect(readSessionCookie('ebbline-session=s3cret', true)).toBeNull();
    expect(readSessionCookie('__Host-ebbline-session=s3cret', false)).toBeNull();
    expect(readSessionCookie('other=1; ebbline-session=s3cret', false)).toBe('s3cret');
  });

  it('that is empty or absent is none', () => {
    for (const header of [undefined, '', 'ebbline-session=', 'ebbline-session', ';;=']) {
      expect(readSessionCookie(header, false)).toBeNull();
    }
  });
});

describe('a bearer token', () => {
  it('stands behind the word Bearer, in any case', () => {
    // RFC 6750 section 2.1; RFC 9110 section 11.1.
    expect(bearerToken('Bearer abc-._~+/1=')).toBe('abc-._~+/1=');
    expect(bearerToken('bearer abc')).toBe('abc');
  });

  it('of another form is one that is refused, and no header is no token', () => {
    expect(bearerToken(undefined)).toBeNull();
    for (const header of ['', 'Bearer', 'Bearer ', 'Basic abc', 'Bearer a b', `Bearer ${'x'.repeat(300)}`]) {
      expect(bearerToken(header)).toBe('');
    }
  });
});
