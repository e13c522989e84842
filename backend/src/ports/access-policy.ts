/** Which requests are let in at all, by what their headers say of where they come from. */
export interface AccessPolicy {
  /** Null where it is let in; else why not. */
  refusalOf(headers: { readonly host: string | undefined; readonly origin: string | undefined }): AccessRefusal | null;
}

export interface AccessRefusal {
  readonly code: 'HOST_FOREIGN' | 'ORIGIN_FOREIGN';
  readonly message: string;
}

export const ACCESS_POLICY = Symbol('AccessPolicy');
