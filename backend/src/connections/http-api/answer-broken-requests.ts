import type { Server } from 'node:http';
import type { Duplex } from 'node:stream';
import { problemTable, type ProblemCode } from './error-to-status';
import { toProblem } from './problem-error';

/** Requests that are no HTTP, or too much of it, never reach the framework: they are answered here, as problems too. */
export function answerBrokenRequests(server: Server): void {
  server.on('clientError', (fault: NodeJS.ErrnoException, socket: Duplex) => {
    if (fault.code === 'ECONNRESET' || !socket.writable) socket.destroy();
    else socket.end(answerTo(fault));
  });
}

function answerTo(fault: NodeJS.ErrnoException): string {
  const [code, detail] = meaningOf(fault);
  const { status, title } = problemTable[code];
  const body = JSON.stringify(toProblem(code, detail, '/'));
  return [
    `HTTP/1.1 ${status} ${title}`,
    'Content-Type: application/problem+json; charset=utf-8',
    `Content-Length: ${Buffer.byteLength(body)}`,
    'Cache-Control: no-store',
    'Connection: close',
    '',
    body,
  ].join('\r\n');
}

/** Node's codes of a request that it could not read. */
function meaningOf({ code }: NodeJS.ErrnoException): readonly [ProblemCode, string] {
  switch (code) {
    case 'HPE_HEADER_OVERFLOW':
      return ['HEADERS_TOO_LARGE', 'The address and the headers are longer than 16 KiB; shorten them.'];
    case 'ERR_HTTP_REQUEST_TIMEOUT':
      return ['REQUEST_TOO_SLOW', 'The request did not come to its end in time; send it again.'];
    default:
      return ['REQUEST_MALFORMED', 'This is no HTTP request that can be read; send it as RFC 9112 says.'];
  }
}
