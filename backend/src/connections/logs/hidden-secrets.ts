/** What stands in the place of a secret. */
const hidden = '[hidden]';
/** Shorter ones would blot out words that are none. */
const shortest = 4;

/**
 * The last net under a rule that holds before it: no line holds a secret. Passwords of the addresses are looked for as they
 * are written there and decoded; everything also as it stands within JSON, where quotes and backslashes are escaped.
 * @param secrets whole values, and addresses that may hold a name and a password
 */
export function secretHider(secrets: readonly (string | null | undefined)[]): (line: string) => string {
  const known = [...new Set(secrets.flatMap(formsOf).flatMap((form) => [form, withinJson(form)]))].filter(
    ({ length }) => length >= shortest,
  );
  // The longest first: one may stand in another.
  known.sort((a, b) => b.length - a.length);
  return (line) => known.reduce((text, secret) => text.replaceAll(secret, hidden), line);
}

function formsOf(secret: string | null | undefined): readonly string[] {
  if (secret === null || secret === undefined || secret === '') return [];
  if (!URL.canParse(secret)) return [secret];
  const { password } = new URL(secret);
  return password === '' ? [] : [password, decoded(password)];
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

const withinJson = (text: string): string => JSON.stringify(text).slice(1, -1);
