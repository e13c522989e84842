import { request as requestPlain, type IncomingHttpHeaders } from 'node:http';
import { request as requestSecured } from 'node:https';

export interface RawAnswer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

export interface RawAsk {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
  /** Certificate authority to trust, for https. */
  readonly ca?: Buffer;
}

/** A request with headers that `fetch` would not send, and over TLS with an authority of the test's own. */
export function askRaw(url: string, { method = 'GET', headers = {}, body, ca }: RawAsk = {}): Promise<RawAnswer> {
  const request = url.startsWith('https:') ? requestSecured : requestPlain;
  return new Promise((resolve, reject) => {
    // The name that the certificate is for is the one that is connected to, whatever `Host` says.
    const options = { method, headers, agent: false, ...(ca === undefined ? {} : { ca, servername: '' }) };
    const asking = request(url, options, (reply) => {
      let text = '';
      reply.setEncoding('utf8').on('data', (chunk: string) => (text += chunk));
      reply.on('end', () => resolve({ status: reply.statusCode ?? 0, headers: reply.headers, text }));
    });
    asking.on('error', reject);
    asking.end(body);
  });
}
