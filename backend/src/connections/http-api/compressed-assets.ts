import { existsSync, readdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import type { Next, WebRequest, WebResponse } from './web-types';

type Coding = 'br' | 'gzip';
const compress: { readonly [C in Coding]: (text: Buffer) => Promise<Buffer> } = {
  br: (text) => promisify(brotliCompress)(text, { params: { [constants.BROTLI_PARAM_QUALITY]: brotliQuality } }),
  gzip: (text) => promisify(gzip)(text, { level: 9 }),
};
/** Of 11: as small as it gets without a second of work for a large file. */
const brotliQuality = 9;
/** Worth it for text alone: fonts are compressed as they are. */
const mediaTypes: ReadonlyMap<string, string> = new Map([
  ['.js', 'text/javascript; charset=utf-8'],
  ['.css', 'text/css; charset=utf-8'],
  ['.svg', 'image/svg+xml'],
]);

/**
 * Sends scripts and styles compressed to whoever takes that, so that a phone on a poor line waits a third as long. Each is
 * compressed once, when it is first asked for; as a name carries a hash of what it holds, that stays true. They are the same for
 * everybody and hold no secret.
 * @param folder with files whose names carry such a hash; where there is none, nothing is sent
 */
export function compressedAssets(folder: string): (request: WebRequest, response: WebResponse, next: Next) => void {
  const found = existsSync(folder) ? readdirSync(folder) : [];
  const names = new Set(found.filter((name) => mediaTypes.has(extname(name))));
  const made = new Map<string, Promise<Buffer>>();
  const compressed = (name: string, coding: Coding): Promise<Buffer> => {
    const key = `${coding} ${name}`;
    const known = made.get(key) ?? readFile(join(folder, name)).then(compress[coding]);
    made.set(key, known);
    known.catch(() => made.delete(key));
    return known;
  };
  return (request, response, next) => {
    const name = /^\/assets\/([^/]+)$/.exec(request.path)?.[1] ?? '';
    if (!names.has(name) || !isRead(request)) {
      next();
      return;
    }
    response.set('Vary', 'Accept-Encoding');
    const coding = codingFor(request);
    if (coding === null) {
      next();
      return;
    }
    compressed(name, coding).then(
      (body) =>
        response
          .set('Content-Encoding', coding)
          .set('Cache-Control', 'public, max-age=31536000, immutable')
          .type(mediaTypes.get(extname(name)) ?? '')
          .send(body),
      next,
    );
  };
}

const isRead = ({ method }: WebRequest): boolean => method === 'GET' || method === 'HEAD';

/** RFC 9110, 12.5.3: named, and not with a weight of nothing. The smaller one where both are taken; browsers take it over TLS and from this machine. */
function codingFor({ headers }: WebRequest): Coding | null {
  const taken = String(headers['accept-encoding'] ?? '')
    .toLowerCase()
    .split(',')
    .filter((one) => !/;\s*q=0(?:\.0*)?\s*$/.test(one))
    .map((one) => one.split(';')[0]?.trim());
  return taken.includes('br') ? 'br' : taken.includes('gzip') ? 'gzip' : null;
}
