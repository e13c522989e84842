import axe from 'axe-core';
import type { Page } from 'playwright-core';

interface Violation {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly target: readonly unknown[] }[];
}

/** What axe-core finds wrong on a page by its usual rules, WCAG 2.2 A and AA among them; each with its place. */
export async function axeViolations(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    const { axe: rules } = window as unknown as {
      axe: { run(options: unknown): Promise<{ violations: Violation[] }> };
    };
    const runOnly = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    return (await rules.run({ runOnly })).violations;
  });
  return found.flatMap(({ id, help, nodes }) => nodes.map(({ target }) => `${id}: ${help} (${target.join(' ')})`));
}
