/** From a second to a month, by decades: a time to respond may be either. */
const shortest = 1;
const longest = 30 * 86_400;

/** Share of the width at which a length of time stands. */
export function onTimeAxis(seconds: number): number {
  const within = Math.min(longest, Math.max(shortest, seconds));
  return Math.log(within / shortest) / Math.log(longest / shortest);
}

export const timeMarks: readonly { readonly seconds: number; readonly label: string; readonly between?: true }[] = [
  { seconds: 10, label: '10\u00a0s' },
  // Named where there is room for two names.
  { seconds: 180, label: '3\u00a0min', between: true },
  { seconds: 600, label: '10\u00a0min' },
  { seconds: 3600, label: '1\u00a0h' },
  { seconds: 86_400, label: '1\u00a0d' },
];
