// @vitest-environment node
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

type Rgb = readonly [number, number, number];
const css = readFileSync(new URL('../../../../frontend/src/styles/tokens.css', import.meta.url), 'utf8');

function themeOf(selector: string): Map<string, string> {
  const start = css.indexOf(`${selector} {`);
  const block = css.slice(start, css.indexOf('}', start));
  return new Map(
    [...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)].map(([, name = '', value = '']) => [name, value]),
  );
}

const toLinear = (channel: number): number =>
  channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;

function linear(hex: string): Rgb {
  const at = (from: number): number => toLinear(parseInt(hex.slice(from, from + 2), 16) / 255);
  return [at(1), at(3), at(5)];
}

/** WCAG 2.2, definitions of relative luminance and contrast ratio. */
function contrast(one: string, other: string): number {
  const luminance = ([r, g, b]: Rgb): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;
  const [low = 0, high = 0] = [luminance(linear(one)), luminance(linear(other))].sort((a, b) => a - b);
  return (high + 0.05) / (low + 0.05);
}

/** Computed from the equation in WCAG 2.2 (checks wcag-000000-ffffff and following); tolerance of the rows. */
const published = [
  ['#000000', '#ffffff', 21.0],
  ['#777777', '#ffffff', 4.478],
  ['#0000ff', '#ffffff', 8.592],
  ['#949494', '#ffffff', 3.033],
  ['#959595', '#ffffff', 2.995],
] as const;

describe('the contrast formula', () => {
  it.each(published)('gives the ratio of %s on %s as WCAG 2.2 has it', (one, other, expected) => {
    expect(Math.abs(contrast(one, other) - expected)).toBeLessThanOrEqual(0.0015);
  });
});

/** WCAG 2.2: 1.4.3 asks 4.5 of text; 1.4.11 asks 3 of the parts of a picture that are needed to read it. */
const texts = [
  ['ink', ['paper', 'raised', 'bank', 'trail']],
  ['soft', ['paper', 'raised', 'bank']],
  ['on-priority', ['priority-1', 'priority-2', 'priority-3']],
  ['priority-1', ['paper']],
  ['priority-2', ['paper']],
  ['priority-3', ['paper']],
  // A letter in the line's own ink stands at its end.
  ...['line-1', 'line-2', 'line-3', 'line-4', 'line-5', 'line-6'].map((line) => [line, ['paper']] as const),
] as const;
const pictures = [
  ['water', ['paper', 'trail', 'bank']],
  ['edge', ['paper', 'raised', 'bank']],
  ['focus', ['paper', 'raised']],
  ['priority-1', ['paper', 'bank', 'trail']],
  ['priority-2', ['paper', 'bank', 'trail']],
  ['priority-3', ['paper', 'bank', 'trail']],
] as const;

describe.each([
  ['light', ':root'],
  ['dark', ":root[data-theme='dark']"],
])('the %s theme', (_, selector) => {
  const theme = themeOf(selector);
  const token = (name: string): string => {
    const value = theme.get(name);
    if (value === undefined) throw new Error(`no token --${name} under ${selector}`);
    return value;
  };
  const pairs = (rows: readonly (readonly [string, readonly string[]])[]): [string, string][] =>
    rows.flatMap(([front, grounds]) => grounds.map((ground): [string, string] => [front, ground]));

  it.each(pairs(texts))('sets text in %s on %s with 4.5 to 1 or more', (front, ground) => {
    expect(contrast(token(front), token(ground))).toBeGreaterThanOrEqual(4.5);
  });

  it.each(pairs(pictures))('draws %s on %s with 3 to 1 or more', (front, ground) => {
    expect(contrast(token(front), token(ground))).toBeGreaterThanOrEqual(3);
  });

  // Machado, Oliveira, Fernandes 2009, IEEE TVCG 15(6), severity 1.0, on linear RGB; matrices from memory.
  const blindness = {
    protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
    deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
    tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
  } as const;

  it.each(Object.entries(blindness))('keeps the priorities apart for %s eyes', (_kind, matrix) => {
    const seen = ['priority-1', 'priority-2', 'priority-3', 'water'].map((name) =>
      lab(through(matrix, linear(token(name)))),
    );
    const distances = seen.flatMap((one, index) => seen.slice(index + 1).map((other) => distance(one, other)));
    // A difference of 10 in CIE 1976 L*a*b* is plain at a glance: common practice, no source.
    expect(Math.min(...distances)).toBeGreaterThan(10);
  });
});

function through(matrix: readonly number[], [r, g, b]: Rgb): Rgb {
  const row = (at: number): number => {
    const mixed = (matrix[at] ?? 0) * r + (matrix[at + 1] ?? 0) * g + (matrix[at + 2] ?? 0) * b;
    return Math.min(1, Math.max(0, mixed));
  };
  return [row(0), row(3), row(6)];
}

/** CIE 15: linear sRGB (IEC 61966-2-1, D65) to L*a*b*. */
function lab([r, g, b]: Rgb): Rgb {
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

const distance = (one: Rgb, other: Rgb): number => Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);
