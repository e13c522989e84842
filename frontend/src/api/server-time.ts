/** ms by which the server's clock is ahead of this browser's. */
let aheadMs = 0;

/** @param date the header of a reply; its resolution is a second (RFC 9110 section 6.6.1) */
export function noteServerDate(date: string | null): void {
  const at = date === null ? Number.NaN : Date.parse(date);
  if (!Number.isNaN(at)) aheadMs = at - Date.now();
}

/** The server's wall clock as far as this browser knows it, ms since 1970: its sessions end by it. */
export const serverNowMs = (): number => Date.now() + aheadMs;
