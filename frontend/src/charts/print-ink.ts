import type { LaneInk } from './lane-ink';

/** The inks of the light theme, whichever is in force: a picture that is taken along is for paper. */
export const printInk: LaneInk = {
  lines: ['#2f5f78', '#76601d', '#2e2a33', '#47704c', '#7d5674', '#6b6860'],
  soft: '#535c62',
  grid: '#d9d7d0',
  ink: '#20262b',
  paper: '#ffffff',
};

/** By priority. */
export const printPriorities: { readonly [P in 1 | 2 | 3]: string } = { 1: '#a0143b', 2: '#a35b00', 3: '#4543b8' };
