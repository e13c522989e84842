/** What each colour of the theme is for, by its name in the style sheet; a test holds that none is missing. */
export const tokenWords: readonly (readonly [name: string, words: string])[] = [
  ['paper', 'ground of every screen'],
  ['raised', 'ground of fields, buttons, forms'],
  ['bank', 'what the water must not touch: boiling, room air'],
  ['line', 'rules between rows; carries no meaning'],
  ['edge', 'outlines of fields and pictures, ticks'],
  ['soft', 'labels and remarks'],
  ['ink', 'values and text'],
  ['focus', 'ring around what the keyboard is on'],
  ['water', 'water, heat, a value in a picture'],
  ['trail', 'its last hour, and what is allowed'],
  ['priority-1', 'priority 1'],
  ['priority-2', 'priority 2'],
  ['priority-3', 'priority 3'],
  ['on-priority', 'number in a priority’s shape'],
  ['line-1', 'line over time, first'],
  ['line-2', 'second'],
  ['line-3', 'third'],
  ['line-4', 'fourth'],
  ['line-5', 'fifth'],
  ['line-6', 'sixth'],
];

/** Sizes of type that the screens use, px; a test holds that there are no others. */
export const typeSteps: readonly (readonly [px: number, words: string])[] = [
  [28, 'name of a screen'],
  [24, 'the one figure of a test'],
  [20, 'a headline figure'],
  [18, 'a figure of a chapter, an open value'],
  [17, 'name of a unit in a list'],
  [16, 'text, names of chapters'],
  [15, 'rows of lists'],
  [14, 'facts, remarks'],
  [13, 'labels, ages'],
  [12, 'numbers of axes'],
  [11, 'names in a picture'],
];

/** Distances between things, px. */
export const spaceSteps = [2, 4, 8, 12, 16, 24, 32] as const;
