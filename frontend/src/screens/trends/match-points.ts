/** A point that can be picked. */
export interface Pickable {
  readonly point: string;
  readonly title: string;
}

/** Most that a list shows at once: more words make it shorter. */
export const mostMatches = 40;

/** Points whose title or id holds every word that was typed, those that begin with the first word before the others. */
export function matchPoints(all: readonly Pickable[], typed: string): readonly Pickable[] {
  const words = typed
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const first = words[0] ?? '';
  const found = all.filter(({ point, title }) => {
    const text = `${title} ${point}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
  const begins = ({ title }: Pickable): number => Number(!title.toLowerCase().startsWith(first));
  return [...found].sort((one, other) => begins(one) - begins(other)).slice(0, mostMatches);
}
