/** A path of this page's own to go to after a sign-in; anything else, such as another site's address, becomes `/`. */
export function ownPath(given: unknown): string {
  if (typeof given !== 'string' || !/^\/(?![/\\])/u.test(given)) return '/';
  try {
    const base = 'http://own.invalid';
    const url = new URL(given, base);
    // Steps up are taken out of a path, and what is left may begin like another site's address.
    const isOwn = url.origin === base && !url.pathname.startsWith('//');
    return isOwn ? `${url.pathname}${url.search}${url.hash}` : '/';
  } catch {
    return '/';
  }
}
