/** Of an `Authorization` header (RFC 6750 section 2.1): null where there is no such header, empty where it is of another kind or malformed. */
export function bearerToken(header: string | undefined): string | null {
  if (header === undefined) return null;
  return /^Bearer +([A-Za-z0-9._~+/-]{1,200}=*) *$/i.exec(header)?.[1] ?? '';
}
