import type { Page } from 'playwright-core';

interface Stop {
  readonly what: string;
  /** Place on the whole page, px; null for what stands fixed over it. */
  readonly place: {
    readonly left: number;
    readonly top: number;
    readonly right: number;
    readonly bottom: number;
    readonly aside: boolean;
  } | null;
  readonly seen: boolean;
  readonly covered: boolean;
  readonly again: boolean;
}

/** More than the longest screen has. */
const most = 600;

/**
 * Goes through a whole screen with the Tab key and tells what is wrong on the way: a stop that shows no focus, one that
 * lies under something else (WCAG 2.2, 2.4.7 and 2.4.11), a jump back to what stands above and to the left (2.4.3), a place
 * from which the key does not lead on, and what is never reached (2.1.1).
 */
export async function faultsByTab(page: Page): Promise<readonly string[]> {
  await page.evaluate(() => document.querySelector<HTMLElement>('.skip')?.focus());
  const faults: string[] = [];
  let before: Stop | null = null;
  for (let stops = 0; ; stops += 1) {
    const stop = await page.evaluate(stopHere);
    if (stop === null) break;
    if (stop.again || stops >= most) {
      if (!stop.what.startsWith('a.skip')) faults.push(`the key leads back to ${stop.what}`);
      break;
    }
    if (!stop.seen) faults.push(`shows no focus: ${stop.what}`);
    if (stop.covered) faults.push(`is covered while it has the focus: ${stop.what}`);
    if (before?.place && stop.place !== null && goesBack(before.place, stop.place))
      faults.push(`the focus goes back, from ${before.what} to ${stop.what}`);
    before = stop;
    await page.keyboard.press('Tab');
  }
  return [...faults, ...(await page.evaluate(neverReached))];
}

type Place = NonNullable<Stop['place']>;
/** Above what was left, and not in a column to its right. From what stands beside a screen it leads to the screen's beginning. */
const goesBack = (from: Place, to: Place): boolean => !from.aside && to.bottom <= from.top - 4 && to.left < from.right;

/** Runs in the page. */
function stopHere(): Stop | null {
  const one = document.activeElement;
  if (one === null || one === document.body || one === document.documentElement) return null;
  const page = window as unknown as { walked?: Set<Element>; walkedLast?: Element };
  const walked = (page.walked ??= new Set());
  // A field for a time has a stop for each of its parts, which the browser marks itself.
  const inside = page.walkedLast === one;
  const again = walked.has(one) && !inside;
  walked.add(one);
  page.walkedLast = one;
  const { left, top, right, bottom } = one.getBoundingClientRect();
  const style = getComputedStyle(one);
  const probe = document.createElement('i');
  probe.style.color = 'var(--focus)';
  document.body.append(probe);
  const ring = getComputedStyle(probe).color;
  probe.remove();
  const seen =
    inside ||
    (style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2) ||
    // In a drawing a shape of its own takes the ring.
    [...one.querySelectorAll('rect')].some((shape) => {
      const { stroke, strokeWidth } = getComputedStyle(shape);
      return stroke === ring && parseFloat(strokeWidth) >= 2;
    });
  let fixed = false;
  for (let up: Element | null = one; up !== null; up = up.parentElement) {
    const { position, overflowY } = getComputedStyle(up);
    // What scrolls on its own has no place on the page.
    const scrolls = ['auto', 'scroll'].includes(overflowY) && up.scrollHeight > up.clientHeight;
    if (['fixed', 'sticky'].includes(position) || (scrolls && up !== document.documentElement)) fixed = true;
  }
  const x = Math.min(Math.max((left + right) / 2, 1), innerWidth - 1);
  const at = document.elementFromPoint(x, Math.min(Math.max((top + bottom) / 2, 0), innerHeight - 1));
  // What somebody opened goes away by Escape (held by a test), and so may lie over the rest.
  const opened = at?.closest('[role=dialog]') ?? null;
  const covered =
    at !== null && opened === null && bottom - top < innerHeight && !one.contains(at) && !at.contains(one);
  const name = one.getAttribute('aria-label') ?? one.textContent.trim().replaceAll(/\s+/g, ' ').slice(0, 40);
  return {
    what: `${one.tagName.toLowerCase()}.${one.getAttribute('class') ?? ''} “${name}”`,
    place: fixed
      ? null
      : { left, top: top + scrollY, right, bottom: bottom + scrollY, aside: one.closest('aside') !== null },
    seen,
    covered: covered && one.closest('label')?.contains(at) !== true,
    again,
  };
}

/** Runs in the page. */
function neverReached(): string[] {
  const walked = (window as unknown as { walked?: Set<Element> }).walked ?? new Set<Element>();
  const takes =
    'a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), summary, [tabindex="0"]';
  const late = [...document.querySelectorAll<HTMLElement>(takes)].filter(
    (one) =>
      one.checkVisibility({ visibilityProperty: true }) &&
      one.tabIndex >= 0 &&
      !walked.has(one) &&
      // Of radio buttons of one name the key reaches one.
      !(one instanceof HTMLInputElement && one.type === 'radio'),
  );
  const jumping = document.querySelectorAll('[tabindex]:not([tabindex="0"], [tabindex="-1"])').length;
  delete (window as unknown as { walked?: Set<Element> }).walked;
  return [
    ...late.map((one) => `is never reached: ${one.tagName.toLowerCase()} “${one.textContent.trim().slice(0, 40)}”`),
    ...(jumping > 0 ? [`${jumping} element(s) with an order of their own`] : []),
  ];
}
