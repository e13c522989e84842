import type { Page } from 'playwright-core';
import { axeViolations } from './axe-violations';
import { brokenWords } from './broken-words';

interface AxNode {
  readonly ignored: boolean;
  readonly role?: { readonly value: string };
  readonly name?: { readonly value: string };
  readonly properties?: readonly { readonly name: string; readonly value: { readonly value?: unknown } }[];
}

/** What holds others, and takes the focus only from the program. */
const holders = new Set(['RootWebArea', 'main', 'generic', 'none', 'dialog', 'status', 'paragraph']);

/** Everything that a look at one screen at one width finds wrong: by axe-core, and what `faultsOfLayout` finds. */
export async function faultsOnScreen(page: Page): Promise<readonly string[]> {
  return [...(await axeViolations(page)), ...(await faultsOfLayout(page))];
}

/** What is too wide, has no name, is too small, or reads as broken. */
export async function faultsOfLayout(page: Page): Promise<readonly string[]> {
  return [...(await sideways(page)), ...(await unnamed(page)), ...(await tooSmall(page)), ...(await brokenWords(page))];
}

/** WCAG 2.2, 1.4.10: no scrolling in two directions at 360 px, nor at any other width here. */
async function sideways(page: Page): Promise<readonly string[]> {
  const over = await page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth <= clientWidth) return null;
    const widest = [...document.querySelectorAll('main *')].find(
      (one) => one.getBoundingClientRect().right > clientWidth + 1,
    );
    return `${scrollWidth - clientWidth} px, ${widest?.tagName ?? ''}.${widest?.getAttribute('class') ?? ''}`;
  });
  return over === null ? [] : [`scrolls sideways: ${over}`];
}

/** What takes the focus and has no name, as the browser itself reckons names (WCAG 2.2, 4.1.2). */
async function unnamed(page: Page): Promise<readonly string[]> {
  const cdp = await page.context().newCDPSession(page);
  const { nodes } = (await cdp.send('Accessibility.getFullAXTree')) as { nodes: readonly AxNode[] };
  await cdp.detach();
  const focusable = nodes.filter(
    ({ ignored, role, properties }) =>
      !ignored &&
      !holders.has(role?.value ?? '') &&
      properties?.some(({ name, value }) => name === 'focusable' && value.value === true) === true,
  );
  if (focusable.length === 0) return ['nothing takes the focus'];
  return focusable
    .filter(({ name }) => (name?.value ?? '').trim() === '')
    .map(({ role }) => `has no name: ${role?.value ?? ''}`);
}

/** WCAG 2.2, 2.5.8: 24 × 24 px, but for a link in a sentence. */
async function tooSmall(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const leastPx = 24;
    const asked = 'a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex="0"]';
    return [...document.querySelectorAll<HTMLElement>(asked)].flatMap((one) => {
      if (!one.checkVisibility({ visibilityProperty: true })) return [];
      if (one.matches('a') && getComputedStyle(one).display === 'inline' && !(one instanceof SVGElement)) return [];
      const label = one.matches('[type=checkbox], [type=radio]') ? one.closest('label') : null;
      const { width, height } = (label ?? one).getBoundingClientRect();
      // A hair under it is how the browser rounds.
      if (width === 0 || (width >= leastPx - 0.5 && height >= leastPx - 0.5)) return [];
      const text = (one.getAttribute('aria-label') ?? one.textContent).trim().slice(0, 40);
      return [`too small, ${Math.round(width)} × ${Math.round(height)} px: ${one.tagName} ${text}`];
    });
  });
}
