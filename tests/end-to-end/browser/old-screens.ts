import type { Page } from 'playwright-core';

/** What a screen still shows as if it were of now, after the server has stopped; waits until the screen has found out. */
export async function faultsWhereLost(page: Page): Promise<readonly string[]> {
  await page.getByTestId('old-banner').waitFor();
  return page.evaluate(() => {
    const main = document.querySelector('main');
    const fresh = [...document.querySelectorAll('.age:not(.age-old)')].filter(
      (one) => /\d/.test(one.textContent) && one.closest('.past-picture') === null,
    );
    return [
      ...(main?.classList.contains('page-old') === true ? [] : ['is not marked as old']),
      ...fresh.map((one) => `an age of ${one.textContent.trim()} looks fresh`),
      // A past second is as it was, and says of itself that it is not live.
      ...[...document.querySelectorAll('svg.pressure-window:not(.old)')]
        .filter((one) => one.closest('.past-picture') === null)
        .map(() => 'a strip that looks live'),
      ...(document.querySelector('[data-testid=connection]')?.getAttribute('data-state') === 'lost'
        ? []
        : ['the connection is not told as lost']),
    ];
  });
}
