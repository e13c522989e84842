import { rights } from '@ebbline/shared/contract/people';
import type { Page } from 'playwright-core';

/** What code leaves in a text where something went wrong: no screen has a reason to say it. */
const ofCode = /\bundefined\b|\bNaN\b|\[object|\bnull\b|\{\{|\}\}|="|=>/;
/** Two words with nothing between them: a space that a template lost. */
const joint = new RegExp(
  [
    '[a-z]{3}[A-Z][a-z]{2}',
    '[a-zé][,;:][A-Za-z]{2}',
    '[a-z)]\\d+([.]\\d+)? (kPa|kW|L|s|min|°C|K)\\b',
    '[0-9)](of|and|is|are|in|at|the|to|for|from|with|than)\\b',
  ].join('|'),
);

/** Names of points, keys of the site file, and rights: they are shown as they are written. */
const names = new RegExp(
  ['\\b\\w+([.]\\w+)+\\b', '\\bknownGood\\b', ...rights.map((right) => `\\b${right}\\b`)].join('|'),
  'g',
);

/** Lines of the screen that show a piece of code, or two words run together. */
export async function brokenWords(page: Page): Promise<readonly string[]> {
  const lines = await page.evaluate(() => {
    const hidden = [...document.querySelectorAll<HTMLElement>('code, pre, textarea, select, .visually-hidden')];
    for (const one of hidden) one.style.setProperty('display', 'none', 'important');
    const text = document.body.innerText;
    for (const one of hidden) one.style.removeProperty('display');
    return text.split('\n');
  });
  return lines
    .filter((line) => ofCode.test(line) || joint.test(line.replace(names, '…')))
    .map((line) => `broken words: ${line.slice(0, 200)}`);
}
