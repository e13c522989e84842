import { join } from 'node:path';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { compressedAssets } from './compressed-assets';
import type { Next, WebRequest, WebResponse } from './web-types';

/**
 * Serves the built screens. Files under `assets` carry a hash of what they hold in their names and may be
 * kept for ever; the page itself is asked for anew each time. Every other address is a screen's.
 */
export function serveFrontend(app: NestExpressApplication, folder: string): void {
  app.use(compressedAssets(join(folder, 'assets')));
  app.useStaticAssets(folder, {
    index: false,
    redirect: false,
    setHeaders: (response: { setHeader(name: string, value: string): void }, path: string) => {
      const lasting = path.startsWith(join(folder, 'assets'));
      response.setHeader('Cache-Control', lasting ? 'public, max-age=31536000, immutable' : 'no-cache');
    },
  });
  app.use((request: WebRequest, response: WebResponse, next: Next) => {
    if (isScreen(request)) response.sendFile('index.html', { root: folder, headers: { 'Cache-Control': 'no-cache' } });
    else next();
  });
}

/** An address that is not of the API, the live feed, or a file of the screens that is not there. */
const isScreen = ({ method, path }: WebRequest): boolean =>
  (method === 'GET' || method === 'HEAD') && !/^\/(api|socket\.io|assets)(\/|$)/.test(path);
