import { CodedError } from '@ebbline/shared/errors/coded-error';

export interface InfluxAddress {
  readonly protocol: 'http' | 'https';
  readonly host: string;
  readonly port: number;
  readonly database: string;
  readonly user: string | null;
  readonly password: string | null;
  /** Where it is, without credentials: for messages. */
  readonly shown: string;
}

/**
 * `http(s)://[user:password@]host[:8086][/database]`; the database is `ebbline` where none is named.
 * @throws CodedError HISTORY_URL_INVALID, which never repeats the URL, since it may hold a password
 */
export function influxAddress(url: string): InfluxAddress {
  const parsed = URL.canParse(url) ? new URL(url) : null;
  const protocol = parsed?.protocol === 'https:' ? 'https' : 'http';
  if (parsed === null || !['http:', 'https:'].includes(parsed.protocol) || parsed.hostname === '') {
    const what =
      'the address of InfluxDB is not http(s)://[user:password@]host:port/database; set EBBLINE_INFLUX_URL so';
    throw new CodedError('HISTORY_URL_INVALID', what);
  }
  const database = decodeURIComponent(parsed.pathname.replace(/^\/|\/$/g, '')) || 'ebbline';
  const port = Number(parsed.port) || (protocol === 'https' ? 443 : 8086);
  return {
    protocol,
    host: parsed.hostname,
    port,
    database,
    user: decodeURIComponent(parsed.username) || null,
    password: decodeURIComponent(parsed.password) || null,
    shown: `${protocol}://${parsed.hostname}:${port}/${database}`,
  };
}
