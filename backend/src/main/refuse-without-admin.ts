import type { EdgeEnvironment } from '../connections/config/edge-environment';
import { isLoopbackHost } from '../connections/config/is-loopback';
import type { People } from '../ports/people';
import { StartFault } from './start-fault';

/** Whoever could reach the program first would otherwise be the one to set it up. */
export function refuseWithoutAdmin(
  { httpHost }: { readonly httpHost: string; readonly edge: EdgeEnvironment },
  people: Pick<People, 'setUpNeeded'> | undefined,
): void {
  if (isLoopbackHost(httpHost) || people?.setUpNeeded() === false) return;
  throw new StartFault([
    'EBBLINE_HTTP_HOST lets other machines in, and there is no admin yet.',
    'Start once with EBBLINE_HTTP_HOST=127.0.0.1, open the set-up link that is printed then, and start again.',
  ]);
}
