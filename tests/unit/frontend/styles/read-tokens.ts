import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const source = fileURLToPath(new URL('../../../../frontend/src/', import.meta.url));
const css = readFileSync(join(source, 'styles/tokens.css'), 'utf8');

export const themes = [
  ['light', ':root'],
  ['dark', ":root[data-theme='dark']"],
] as const;

/** Every colour of a theme by its name, as the style sheet has it. */
export function tokensOf(selector: string): ReadonlyMap<string, string> {
  const start = css.indexOf(`${selector} {`);
  const block = css.slice(start, css.indexOf('}', start));
  return new Map(
    [...block.matchAll(/--([\w-]+):\s*([^;]+);/g)].map(([, name = '', value = '']) => [name, value.trim()]),
  );
}

/** Style sheets and style blocks of components, by their path. */
export function allStyles(): ReadonlyMap<string, string> {
  const styles = new Map<string, string>();
  for (const path of readdirSync(source, { recursive: true, encoding: 'utf8' })) {
    if (path.endsWith('.css')) styles.set(path, readFileSync(join(source, path), 'utf8'));
    if (!path.endsWith('.vue')) continue;
    const text = readFileSync(join(source, path), 'utf8');
    const blocks = [...text.matchAll(/<style[^>]*>([\s\S]*?)<\/style>/g)].map(([, block = '']) => block);
    styles.set(path, blocks.join('\n'));
  }
  return styles;
}
