import type { LineFault } from './line-fault';

/** So many places are named; of more it is only said how many. */
const named = 6;

/** Warnings that say the same of several places become one, at the first of them, with the others counted. */
export function mergeWarnings(warnings: readonly LineFault[]): readonly LineFault[] {
  const same = new Map<string, [LineFault, ...LineFault[]]>();
  for (const one of warnings) {
    const others = same.get(one.message);
    if (others === undefined) same.set(one.message, [one]);
    else others.push(one);
  }
  return [...same.values()].map(([first, ...others]) =>
    others.length === 0 ? first : { ...first, message: `${first.message}; the same at ${places(first, others)}` },
  );
}

function places(first: LineFault, others: readonly LineFault[]): string {
  const lines = [
    ...new Set(
      others.map(({ file, line }) => `${file === first.file ? '' : `${file ?? 'the site file'} `}line ${line}`),
    ),
  ];
  const more = lines.length - named;
  const list = lines.slice(0, more > 0 ? named : undefined).join(', ');
  return `${others.length} more ${others.length === 1 ? 'place' : 'places'} (${list}${more > 0 ? ` and ${more} more` : ''})`;
}
