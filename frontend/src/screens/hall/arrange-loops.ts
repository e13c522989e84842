import type { Site } from '@ebbline/shared/contract/http-api';
import type { LoopLine } from '@ebbline/shared/contract/live-feed';
import { groupLoops } from './group-loops';
import type { HallAddress } from './hall-address';
import type { Need } from './need-of';
import { byNeed, needOf } from './need-of';

/** A heading, or a loop under one. */
export type HallItem =
  | { readonly kind: 'title'; readonly key: string; readonly text: string }
  | { readonly kind: 'loop'; readonly key: string; readonly line: LoopLine; readonly together: boolean };

const needTitles: { readonly [N in Need]: string } = {
  person: 'A person is needed',
  margin: 'A margin may lie below its guard',
  unknown: 'No fresh margin',
  aside: 'An alarm is set aside while its condition holds',
  work: 'Not running as usual',
  calm: 'Calm',
};

/** The loops in the order and groups of an address, place by place as the site file has them where it says nothing else. */
export function arrangeLoops(
  lines: readonly LoopLine[],
  site: Pick<Site, 'loops' | 'units'> | null,
  { order, group }: Pick<HallAddress, 'order' | 'group'>,
): readonly HallItem[] {
  if (order === 'need') return inGroups(byNeed(lines), (line) => needTitles[needOf(line)]);
  if (group === 'none') return lines.map((line) => loopItem(line, false));
  if (group === 'gateway') {
    const gateways = new Map(site?.units.map(({ id, gateway }) => [id, gateway]));
    return inGroups(lines, ({ unit }) => `Gateway ${gateways.get(unit) ?? 'not known'}`);
  }
  return groupLoops(lines, site?.loops ?? []).flatMap(({ id, title, lines: own }) => [
    ...(title === null ? [] : [{ kind: 'title', key: `title ${id}`, text: title } as const]),
    ...own.map((line) => loopItem(line, title !== null)),
  ]);
}

const loopItem = (line: LoopLine, together: boolean): HallItem => ({ kind: 'loop', key: line.unit, line, together });

/** Each group at the place of its first loop, with how many it has; a single one has nothing to be told from. */
function inGroups(lines: readonly LoopLine[], titleOf: (line: LoopLine) => string): readonly HallItem[] {
  const groups = new Map<string, LoopLine[]>();
  for (const line of lines) {
    const title = titleOf(line);
    const own = groups.get(title);
    if (own === undefined) groups.set(title, [line]);
    else own.push(line);
  }
  return [...groups].flatMap(([title, own]) => [
    { kind: 'title', key: `title ${title}`, text: `${title}: ${own.length}` } as const,
    ...own.map((line) => loopItem(line, false)),
  ]);
}
