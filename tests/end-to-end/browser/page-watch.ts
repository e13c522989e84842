import type { Page } from 'playwright-core';

/** What a page did since it was last asked. */
export interface Watched {
  /** Sum of layout shifts without a hand on it, as the browser scores them (Layout Instability API), and what moved. */
  readonly shift: number;
  readonly moved: readonly string[];
  /** What a screen reader was told, one line for each time. */
  readonly said: readonly string[];
}

/**
 * To be called before the page goes anywhere. Its monotonic clock stands still from then on, so that a machine that
 * stands still for some seconds is not told as a lost connection.
 */
export async function watchPage(page: Page): Promise<void> {
  await page.addInitScript(() => {
    performance.now = () => 1000;
    interface Shift extends PerformanceEntry {
      readonly value: number;
      readonly hadRecentInput: boolean;
      readonly sources: readonly {
        readonly node: Node | null;
        readonly previousRect: DOMRectReadOnly;
        readonly currentRect: DOMRectReadOnly;
      }[];
    }
    const place = ({ x, y, width, height }: DOMRectReadOnly): string =>
      `${Math.round(x)},${Math.round(y)} ${Math.round(width)}×${Math.round(height)}`;
    const nameOf = (node: Node | null): string => {
      const element = node instanceof Element ? node : (node?.parentElement ?? null);
      return `${element?.tagName.toLowerCase() ?? '?'}.${element?.getAttribute('class') ?? ''}`;
    };
    const watched = { shift: 0, moved: [] as string[], said: [] as string[] };
    const take = (entries: PerformanceEntryList): void => {
      for (const { value, hadRecentInput, sources } of entries as Shift[]) {
        if (hadRecentInput) continue;
        watched.shift += value;
        for (const { node, previousRect, currentRect } of sources)
          watched.moved.push(`${nameOf(node)} ${place(previousRect)} → ${place(currentRect)}`);
      }
    };
    const shifts = new PerformanceObserver((list) => take(list.getEntries()));
    shifts.observe({ type: 'layout-shift', buffered: true });
    Object.assign(window, { watched, takeShifts: () => take(shifts.takeRecords()) });

    const roles = ['status', 'alert', 'log', 'timer'].map((role) => `[role=${role}]`);
    const region = ['[aria-live]:not([aria-live=off])', 'output', ...roles].join();
    const before = new WeakMap<Element, string>();
    new MutationObserver((changes) => {
      const regions = new Set<Element>();
      for (const { target, addedNodes } of changes) {
        const around = (target instanceof Element ? target : target.parentElement)?.closest(region);
        if (around) regions.add(around);
        for (const node of addedNodes)
          if (node instanceof Element)
            for (const one of [node, ...node.querySelectorAll('*')]) if (one.matches(region)) regions.add(one);
      }
      for (const one of regions) {
        const text = one.textContent.replaceAll(/\s+/g, ' ').trim();
        const known = before.get(one);
        before.set(one, text);
        if (text !== '' && text !== known && one.closest('[aria-hidden=true]') === null) watched.said.push(text);
      }
    }).observe(document, { subtree: true, childList: true, characterData: true });
  });
}

/** What happened since the last time; and begins anew. */
export function takeWatched(page: Page): Promise<Watched> {
  return page.evaluate(async () => {
    // What is drawn by now is counted with it.
    await new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done())));
    const { watched, takeShifts } = window as unknown as {
      watched: { shift: number; moved: string[]; said: string[] };
      takeShifts(): void;
    };
    takeShifts();
    const { shift, moved, said } = watched;
    Object.assign(watched, { shift: 0, moved: [], said: [] });
    return { shift, moved: [...new Set(moved)], said };
  });
}
