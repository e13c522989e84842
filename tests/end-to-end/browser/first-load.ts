/** What a browser fetches of a built frontend before it can show something, by the name of each file. */
export type Scripts = ReadonlyMap<string, string>;

const nameIn = (pattern: RegExp, text: string): string[] => [...text.matchAll(pattern)].map(([, name]) => name ?? '');
/** `import … from "./a.js"`, `import "./a.js"` and `export … from "./a.js"`. */
const needed = (text: string): string[] => nameIn(/(?:\bfrom|\bimport|\bexport)\s*["']\.\/([\w.-]+\.js)["']/g, text);
/** `import("./a.js")` */
const fetchedLater = (text: string): string[] => nameIn(/\bimport\(\s*["'`]\.\/([\w.-]+\.js)["'`]/g, text);

function withNeeded(
  scripts: Scripts,
  names: readonly string[],
  alsoLater: boolean,
  there: Iterable<string> = [],
): ReadonlySet<string> {
  const seen = new Set(there);
  const queue = [...names];
  for (let name = queue.pop(); name !== undefined; name = queue.pop()) {
    if (seen.has(name)) continue;
    seen.add(name);
    const text = scripts.get(name);
    if (text === undefined) throw new Error(`the build has no ${name}, though something asks for it`);
    queue.push(...needed(text), ...(alsoLater ? fetchedLater(text) : []));
  }
  return seen;
}

/** The scripts that the page itself names. */
export const entriesOf = (html: string): string[] =>
  nameIn(/<(?:script|link)\b[^>]*(?:src|href)="\/assets\/([\w.-]+\.js)"/g, html);

/**
 * For each way to come in (the page alone, then each script that its entry fetches later: a screen), the scripts that
 * are loaded, those which that screen fetches at once included. What the page fetches later is other screens, which a screen that
 * shares code with the page does not bring.
 */
export function firstLoads(html: string, scripts: Scripts): ReadonlyMap<string, ReadonlySet<string>> {
  const entries = entriesOf(html);
  const page = withNeeded(scripts, entries, false);
  const screens = [...page].flatMap((name) => fetchedLater(scripts.get(name) ?? ''));
  return new Map([
    ['the page', page] as const,
    ...screens.map((screen) => [screen, withNeeded(scripts, [screen], true, page)] as const),
  ]);
}

/** kB (1000 bytes) of some scripts, by the bytes in which each is sent. */
export const kbOf = (bytes: ReadonlyMap<string, number>, names: Iterable<string>): number =>
  [...names].reduce((sum, name) => sum + (bytes.get(name) ?? Number.NaN), 0) / 1000;
