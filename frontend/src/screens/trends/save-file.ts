/** Hands a file to the browser, which keeps it where the person says. */
export function saveFile(content: Blob, name: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has begun to read it by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** `trend-2026-11-26-150000-to-160000.csv`, in the site's zone. @param from @param to `2026-11-26 15:00:00` */
export const fileName = (from: string, to: string, ending: 'csv' | 'png'): string =>
  `trend-${from} to ${to}.${ending}`.replaceAll(':', '').replaceAll(' ', '-');
