/** What we use of a request and a response of the web framework. */
export interface WebRequest {
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly socket: { readonly remoteAddress?: string | undefined; readonly encrypted?: boolean | undefined };
}

export interface WebResponse {
  readonly headersSent: boolean;
  status(code: number): this;
  set(name: string, value: string | string[]): this;
  type(mediaType: string): this;
  send(body: string | Buffer): this;
  sendFile(path: string, options: object): void;
}

export type Next = (fault?: unknown) => void;
