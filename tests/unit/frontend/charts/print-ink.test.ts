// @vitest-environment node
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { inkCount } from '../../../../frontend/src/charts/lane-ink';
import { printInk, printPriorities } from '../../../../frontend/src/charts/print-ink';

const css = await readFile(new URL('../../../../frontend/src/styles/tokens.css', import.meta.url), 'utf8');
const light = css.slice(0, css.indexOf("[data-theme='dark']"));
const token = (name: string): string | undefined => new RegExp(`--${name}: ([^;]+);`).exec(light)?.[1];

describe('the inks of a picture for paper', () => {
  it('are those of the light theme', () => {
    expect(printInk.lines).toEqual(Array.from({ length: inkCount }, (_, index) => token(`line-${index + 1}`)));
    expect([printInk.ink, printInk.soft, printInk.grid]).toEqual([token('ink'), token('soft'), token('line')]);
    expect(Object.entries(printPriorities)).toEqual(['1', '2', '3'].map((one) => [one, token(`priority-${one}`)]));
  });
});
