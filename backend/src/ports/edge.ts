/** What the edge looks at of a request; those of HTTP, TLS and of the sockets all fit. */
export interface EdgeRequest {
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
  readonly socket: { readonly remoteAddress?: string | undefined; readonly encrypted?: boolean | undefined };
}

export interface EdgeRefusal {
  readonly code: 'HOST_FOREIGN' | 'ORIGIN_FOREIGN' | 'NOT_SECURED';
  readonly message: string;
}

/**
 * Where this program ends and the network begins: who is at the other end, and whether the way there is secured.
 * Forwarding headers are believed of the proxies named in EBBLINE_PROXY alone.
 */
export interface Edge {
  /** True: reached by more than who sits at this machine, so that nobody unsigned is given anything. */
  readonly exposed: boolean;
  /** Address of who asks, IPv4 written as such; behind a named proxy, as that proxy says. Empty where it is gone. */
  stationOf(request: EdgeRequest): string;
  /** True: over TLS, to us or to a named proxy. Cookies are then Secure, and browsers are told to stay with TLS. */
  isSecure(request: EdgeRequest): boolean;
  /** Null where the request is let in at all, by its Host, its Origin and the way it came; else why not. */
  refusalOf(request: EdgeRequest): EdgeRefusal | null;
}

export const EDGE = Symbol('Edge');
