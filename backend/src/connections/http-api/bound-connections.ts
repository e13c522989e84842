import type { Server } from 'node:http';

/** Ten times what fifty screens with a socket and six connections each need at once. */
const CONNECTIONS = 3000;
/** Headers are a few hundred bytes; the largest body is a site file of 4 MB, at 1 Mbit/s. */
const HEADERS_WITHIN_MS = 15_000;
const REQUEST_WITHIN_MS = 60_000;

/** Who opens connections and says nothing, or says it drop by drop, holds none of ours for long. */
export function boundConnections(server: Server): void {
  server.maxConnections = CONNECTIONS;
  server.headersTimeout = HEADERS_WITHIN_MS;
  server.requestTimeout = REQUEST_WITHIN_MS;
}
