import { whoHoldsPort } from '../connections/config/who-holds-port';
import { StartFault } from './start-fault';

/** A port that can't be had is for the one who starts the program to settle; anything else is a fault of ours. */
export function webStartFault(error: unknown, { host, port }: { host: string; port: number }): unknown {
  switch ((error as NodeJS.ErrnoException).code) {
    case 'EADDRINUSE': {
      const holder = whoHoldsPort(port);
      const told = holder === null ? ' by a program that can not be named here' : ` by ${holder}`;
      return new StartFault([
        `The HTTP port ${port} is taken${told}.`,
        'End that program, or set EBBLINE_HTTP_PORT to a free port.',
      ]);
    }
    case 'EACCES':
      return new StartFault([
        `The HTTP port ${port} may not be used by this user.`,
        'Set EBBLINE_HTTP_PORT to a port above 1023.',
      ]);
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return new StartFault([`${host} is no address of this machine.`, 'Set EBBLINE_HTTP_HOST to 127.0.0.1.']);
    default:
      return error;
  }
}
