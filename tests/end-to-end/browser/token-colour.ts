import type { Page } from 'playwright-core';
import type { Colour } from './picture';

/** A colour of the page's own tokens, such as `--water`, as the browser paints it. */
export async function tokenColour(page: Page, name: string): Promise<Colour> {
  const text = await page.evaluate((token) => getComputedStyle(document.documentElement).getPropertyValue(token), name);
  const match = /^\s*#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})\s*$/i.exec(text);
  if (match === null) throw new Error(`${name} is ${text}, not #rrggbb`);
  const part = (i: number): number => parseInt(match[i] ?? '', 16);
  return [part(1), part(2), part(3)];
}
