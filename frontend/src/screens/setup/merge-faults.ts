import type { SiteState } from '@ebbline/shared/contract/site-state';

type SiteFault = SiteState['warnings'][number];

/** One thing that is said of several places of a site file. */
export interface MergedFault {
  readonly message: string;
  readonly places: readonly Pick<SiteFault, 'line' | 'key'>[];
}

const number = /\d+(?:\.\d+)?/g;
/** Alike: the same key of the file, and the same words but for their numbers. */
const likeness = ({ key, message }: SiteFault): string =>
  `${key.split('.').at(-1) ?? ''} ${message.replace(number, '#')}`;

/** Faults that say the same of several places become one, in the order of the first of each. */
export function mergeFaults(faults: readonly SiteFault[]): readonly MergedFault[] {
  const alike = new Map<string, SiteFault[]>();
  for (const fault of faults) alike.set(likeness(fault), [...(alike.get(likeness(fault)) ?? []), fault]);
  return [...alike.values()].map((group) => ({
    message: mergedMessage(group.map(({ message }) => message)),
    places: group.map(({ line, key }) => ({ line, key })),
  }));
}

/** The words are the same; a number that differs becomes the least and the most of it. */
function mergedMessage(messages: readonly string[]): string {
  const numbers = messages.map((message) => message.match(number) ?? []);
  let index = 0;
  return (messages[0] ?? '').replace(number, (own) => {
    const here = numbers.map((all) => all[index] ?? own);
    index += 1;
    const [least, most] = [...new Set(here)].sort((one, other) => Number(one) - Number(other)).filter(isEnd);
    return least === undefined ? own : most === undefined ? least : `${least} to ${most}`;
  });
}

const isEnd = (_: string, at: number, all: readonly string[]): boolean => at === 0 || at === all.length - 1;
