// @vitest-environment node
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const source = fileURLToPath(new URL('../../../../frontend/src/', import.meta.url));

/** Script and template of every file outside the room of words and numbers, without comments and styles. */
const files = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .filter((path) => /\.(vue|ts)$/.test(path) && !path.startsWith('text/'))
  .map((path) => {
    const text = readFileSync(join(source, path), 'utf8')
      .replace(/<style[\s\S]*?<\/style>/g, '')
      .replace(/\/\*[\s\S]*?\*\/|<!--[\s\S]*?-->/g, '')
      .replace(/(^|\s)\/\/.*$/gm, '');
    return [path, text] as const;
  });

const findAll = (pattern: RegExp): string[] =>
  files.flatMap(([path, text]) => [...text.matchAll(pattern)].map(([found]) => `${found.trim()} in ${path}`));

/** Fields that name the unit in which they are kept, and converted by it; a parameter of the water by its name. */
const named = [
  /^'(L\/min free air|L)' in components\/(Permit|Tightness)Form\.vue$/,
  /^"(L\/min free air|L|°C)" in components\/(Permit|Tightness|HandEntry)Form\.vue$/,
  /^'°C' in components\/HandEntryForm\.vue$/,
  /^'empty: the instrument has brought it to 25 °C' in components\/HandEntryForm\.vue$/,
  // A line of a path in a picture.
  /^'L' in components\/path-geometry\.ts$/,
  /^'conductivity at 25 °C' in screens\/loop\/chapter-points\.ts$/,
];

describe('a value on a screen', () => {
  it('takes its unit of measure from the table, and from nowhere else', () => {
    const quoted = findAll(/(['"`])(?:(?!\1)[^\n])*(?:kPa|L\/min|°C|°F|psi|gpm)(?:(?!\1)[^\n])*\1/g);
    const alone = findAll(/'(?:K|L|mm|W)'|"(?:L|K)"/g);
    expect([...quoted, ...alone].filter((one) => !named.some((known) => known.test(one)))).toEqual([]);
    expect(quoted.length).toBeGreaterThan(3);
  });

  it('has no unit written into a template', () => {
    const written = findAll(/>[^<>{}\n]*(?:kPa|L\/min|°C|°F|\bpsi|\bgpm\b)[^<>{}\n]*</g);
    const own = findAll(/^\s+[^'"`={}<>]*(?:\bkPa\b|L\/min|°C|°F)[^'"`={}<>]*$/gm);
    // What the two systems are is said in a sentence that names both.
    expect([...written, ...own].filter((one) => !one.endsWith('screens/signs/UnitSigns.vue'))).toEqual([]);
  });

  it('is converted by the table’s own steps, so that none forgets where the scale begins', () => {
    expect(findAll(/\.factor\b/g)).toEqual([]);
  });

  it('is rounded in one place', () => {
    // Places of a picture in px and per cent, which nobody reads.
    const places = ['components/path-geometry.ts', 'screens/past/PastTrack.vue'];
    const found = findAll(/\.toFixed\(|\.toLocaleString\(|Intl\.NumberFormat/g);
    expect(found.filter((one) => !places.some((place) => one.endsWith(place)))).toEqual([]);
  });

  it('is scaled to kilo in no place of its own', () => {
    expect(findAll(/formatNumber\([^()\n]*\/ 1000/g)).toEqual([]);
  });
});
