// @vitest-environment node
import { describe, expect, it } from 'vitest';
import { tokenWords, typeSteps } from '../../../../frontend/src/screens/signs/token-words';
import { apartFor, colourVisions, contrast, mixed } from '../../../helpers/colour-maths';
import { allStyles, themes, tokensOf } from './read-tokens';

/** On which ground each token is laid. WCAG 2.2: 1.4.3 asks 4.5 of text, 1.4.11 asks 3 of what is needed to read a picture. */
interface Uses {
  readonly text?: readonly string[];
  readonly picture?: readonly string[];
  /** Said in words or drawn by an edge besides: nothing hangs on it. */
  readonly ground?: true;
}

const everyGround = ['paper', 'raised', 'bank', 'trail'];
/** The ground of an alarm's stretch on the time axis, and of one that is pointed at (styles/trends.css). */
const tints = ['1 at 12 %', '2 at 12 %', '3 at 12 %', '1 at 26 %', '2 at 26 %', '3 at 26 %'].map(
  (one) => `priority-${one}`,
);
const priority: Uses = { text: ['paper'], picture: ['paper', 'raised', 'bank', 'trail'] };
/** A letter in the line's own ink stands at its end. */
const line: Uses = { text: ['paper'] };
const uses: { readonly [token: string]: Uses } = {
  paper: { ground: true },
  raised: { ground: true },
  line: { ground: true },
  bank: { ground: true },
  trail: { ground: true },
  ink: { text: [...everyGround, ...tints], picture: everyGround },
  soft: { text: ['paper', 'raised', 'bank'], picture: ['paper', 'raised'] },
  edge: { picture: ['paper', 'raised', 'bank', 'trail'] },
  water: { picture: ['paper', 'raised', 'bank', 'trail'] },
  // A filling that lets its ground through (fill-opacity of HeatBar, EnergyBar, PriorityMix).
  'water at 75 %': { picture: ['paper'] },
  focus: { picture: ['paper', 'raised', 'bank'] },
  'on-priority': { text: ['priority-1', 'priority-2', 'priority-3'] },
  'priority-1': priority,
  'priority-2': priority,
  'priority-3': priority,
  'line-1': line,
  'line-2': { ...line, picture: ['paper'] },
  'line-3': line,
  'line-4': line,
  'line-5': line,
  'line-6': line,
};

const pairsOf = (kind: 'text' | 'picture'): [string, string][] =>
  Object.entries(uses).flatMap(([front, use]) => (use[kind] ?? []).map((ground): [string, string] => [front, ground]));

/** `priority-1 at 12 %`: that token mixed into paper. */
function colourOf(tokens: ReadonlyMap<string, string>, name: string): string {
  const [token = '', percent] = name.replace(' %', '').split(' at ');
  const value = tokens.get(token);
  const paper = tokens.get('paper');
  if (value === undefined || paper === undefined) throw new Error(`no token --${token}`);
  return percent === undefined ? value : mixed(value, paper, Number(percent) / 100);
}

describe('the tokens', () => {
  const [light, dark] = themes.map(([, selector]) => tokensOf(selector));

  it('have a ground to be tested on, each of them', () => {
    expect([...(light?.keys() ?? [])].sort()).toEqual(
      Object.keys(uses)
        .filter((name) => !name.includes(' '))
        .sort(),
    );
  });

  it('are the same in both themes, and colours', () => {
    expect([...(dark?.keys() ?? [])].sort()).toEqual([...(light?.keys() ?? [])].sort());
    for (const value of [...(light?.values() ?? []), ...(dark?.values() ?? [])])
      expect(value).toMatch(/^#[0-9a-f]{6}$/);
  });

  it('are all shown and said on the screen of signs', () => {
    expect(tokenWords.map(([name]) => name).sort()).toEqual([...(light?.keys() ?? [])].sort());
  });
});

describe('the styles', () => {
  const styles = [...allStyles()].filter(([path]) => path !== 'styles/tokens.css');

  it('set text in no token that is not tested as text', () => {
    const texts = new Set(pairsOf('text').map(([front]) => front));
    const found = styles.flatMap(([path, css]) =>
      [...css.matchAll(/(?:^|[\s;{])color:\s*var\(--([\w-]+)\)/g)].map(([, name = '']) => `${name} in ${path}`),
    );
    expect(found.length).toBeGreaterThan(40);
    // Light on dark, paper on ink: what is chosen in a list, and the word of a past hour.
    const turned = ['paper in styles/trends.css', 'paper in screens/past/past.css'];
    expect(found.filter((one) => !texts.has(one.split(' ')[0] ?? '') && !turned.includes(one))).toEqual([]);
  });

  it('draw lines and shapes in no token that is not tested as a picture, but for rules between rows', () => {
    const drawn = new Set([...pairsOf('text'), ...pairsOf('picture')].map(([front]) => front));
    const found = styles.flatMap(([path, css]) =>
      [...css.matchAll(/(?:^|[\s;{])(?:stroke|outline|fill):[^;]*var\(--([\w-]+)\)/g)].map(
        ([, name = '']) => [name, path] as const,
      ),
    );
    expect(found.length).toBeGreaterThan(40);
    const grounds = new Set(Object.keys(uses).filter((name) => uses[name]?.ground === true));
    const known = (name: string): boolean => drawn.has(name) || grounds.has(name) || name === 'of-priority';
    expect(found.filter(([name]) => !known(name))).toEqual([]);
  });

  it('paint with no token that there is not', () => {
    const [light] = themes.map(([, selector]) => tokensOf(selector));
    const known = (name: string): boolean => light?.has(name) === true || name === 'of-priority';
    const paints = /(?:color|fill|stroke|background|border|outline|shadow|decoration)[\w-]*:[^;]*var\(--([\w-]+)\)/g;
    const found = styles.flatMap(([path, css]) =>
      [...css.matchAll(paints)].map(([, name = '']) => [name, path] as const),
    );
    expect(found.length).toBeGreaterThan(200);
    expect(found.filter(([name]) => !known(name))).toEqual([]);
  });

  it('hold no colour of their own beside the tokens, on a screen', () => {
    const bare = styles.flatMap(([path, css]) => {
      const screen = css.replace(/@(?:media print|page)[\s\S]*?\n\}/g, '').replace(/\/\*[\s\S]*?\*\//g, '');
      return [...screen.matchAll(/#[0-9a-f]{3,8}\b|\brgba?\(|\bhsla?\(/gi)].map(([one]) => `${one} in ${path}`);
    });
    expect(bare).toEqual([]);
  });

  it('use no size of type that the screen of signs does not show', () => {
    const shown = new Set(typeSteps.map(([px]) => px));
    // The number inside a priority's shape.
    const inShapes = ['10.5 in components/PriorityShape.vue'];
    const found = styles.flatMap(([path, css]) =>
      [...css.matchAll(/font-size:\s*([\d.]+)px/g)].map(([, px = '']) => `${px} in ${path}`),
    );
    expect(found.length).toBeGreaterThan(60);
    expect(found.filter((one) => !shown.has(Number(one.split(' ')[0])) && !inShapes.includes(one))).toEqual([]);
  });
});

describe.each(themes)('the %s theme', (_, selector) => {
  const tokens = tokensOf(selector);
  const colour = (name: string): string => colourOf(tokens, name);

  it.each(pairsOf('text'))('sets text in %s on %s with 4.5 to 1 or more', (front, ground) => {
    expect(contrast(colour(front), colour(ground))).toBeGreaterThanOrEqual(4.5);
  });

  it.each(pairsOf('picture'))('draws %s on %s with 3 to 1 or more', (front, ground) => {
    expect(contrast(colour(front), colour(ground))).toBeGreaterThanOrEqual(3);
  });

  it('reads paper on ink, as what is chosen in a list is written', () => {
    expect(contrast(colour('paper'), colour('ink'))).toBeGreaterThanOrEqual(4.5);
  });

  const visions = Object.keys(colourVisions) as (keyof typeof colourVisions)[];
  const among = (names: readonly string[]): [string, string][] =>
    names.flatMap((one, at) => names.slice(at + 1).map((other): [string, string] => [one, other]));

  // The alert is drawn in soft, calm in water, doubt (its hatching) in edge. A CIEDE2000 of 10 is seen at a glance: common practice, no source.
  describe.each(visions)('to %s', (vision) => {
    it.each(among(['priority-1', 'priority-2', 'priority-3']))('tells %s from %s', (one, other) => {
      expect(apartFor(vision, colour(one), colour(other))).toBeGreaterThan(10);
    });

    it.each(
      ['priority-1', 'priority-2', 'priority-3'].flatMap((one) =>
        ['water', 'soft', 'edge', 'ink'].map((other): [string, string] => [one, other]),
      ),
    )('tells %s from %s, which asks for nobody', (one, other) => {
      expect(apartFor(vision, colour(one), colour(other))).toBeGreaterThan(10);
    });

    it.each([
      ['water', 'trail'],
      ['water', 'bank'],
      ['trail', 'paper'],
      ['bank', 'paper'],
    ])('tells %s from %s, side by side in a strip', (one, other) => {
      // Laid against each other with an edge: a CIEDE2000 of 5 is seen in a still picture: common practice, no source.
      expect(apartFor(vision, colour(one), colour(other))).toBeGreaterThan(5);
    });
  });
});
