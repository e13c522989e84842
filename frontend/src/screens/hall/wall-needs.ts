import type { Priority } from '@ebbline/shared/contract/alarm';
import type { Site } from '@ebbline/shared/contract/http-api';
import type { LoopLine } from '@ebbline/shared/contract/live-feed';
import { isGone, needsAcknowledgement } from '../../components/alarm-facts';
import { firstSentence } from '../../text/first-sentence';
import { placeTitle } from '../../text/place-title';
import { shapeWords } from '../../text/shape-words';
import { priorityWords } from '../../text/words';
import { sayHeldAside } from '../../text/say-held-aside';
import { byNeed, needOf } from './need-of';

/** One line of a wall: a loop, or many that need the same. */
export interface WallLine {
  readonly key: string;
  readonly name: string;
  /** Null: no alarm stands. */
  readonly priority: Priority | null;
  readonly outlined: boolean;
  readonly text: string;
  /** What else stands there, and what to do first. */
  readonly more: string;
  readonly then: string;
}

type SiteUnit = Site['units'][number] | undefined;

/** From so many on those that need the same share a line, which names the first of them; the strips mark them all. */
const many = 25;
const namedOfMany = 4;

/** Every loop that needs somebody, the most urgent first; none is left out. */
export function wallNeeds(lines: readonly LoopLine[], unitOf: (unit: string) => SiteUnit): readonly WallLine[] {
  const needing = byNeed(lines).filter((line) => !['work', 'calm'].includes(needOf(line)));
  const each = needing.map((line) => wallLine(line, unitOf(line.unit)));
  return each.length < many ? each : together(each);
}

function wallLine(line: LoopLine, unit: SiteUnit): WallLine {
  const { worst, name, moreAlarms } = line;
  if (worst === null) {
    return { key: line.unit, name, priority: null, outlined: false, text: untold(line), more: '', then: '' };
  }
  const where = worst.where === null ? '' : `${placeTitle(worst.where, unit)}. `;
  return {
    key: line.unit,
    name,
    priority: worst.priority,
    outlined: !needsAcknowledgement(worst.state),
    text: shapeWords(worst.title, unit?.shape),
    more: moreAlarms === 0 ? '' : `and ${moreAlarms} more`,
    then: isGone(worst.state)
      ? 'over, not acknowledged'
      : `${priorityWords[worst.priority]}: ${where}${firstSentence(worst.action)}`,
  };
}

/** What a loop needs of which no alarm is told. */
function untold(line: LoopLine): string {
  const need = needOf(line);
  if (need === 'aside') return sayHeldAside(line.setAsideHolding ?? 0);
  return need === 'margin' ? 'a margin may lie below its guard' : 'no fresh margin';
}

function together(lines: readonly WallLine[]): readonly WallLine[] {
  const groups = new Map<string, WallLine[]>();
  for (const line of lines) {
    const key = `${line.priority ?? 'none'} ${line.outlined} ${line.text}`;
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  return [...groups].map(([key, [first, ...others]]) => {
    const all = first === undefined ? others : [first, ...others];
    const named = all.slice(0, namedOfMany).map(({ name }) => name);
    const rest = all.length - named.length;
    const then = `${named.join(', ')}${rest > 0 ? ` and ${rest} more, marked below` : ''}`;
    return {
      key,
      name: all.length === 1 ? (first?.name ?? '') : `${all.length} units`,
      priority: first?.priority ?? null,
      outlined: first?.outlined ?? false,
      text: first?.text ?? '',
      more: '',
      then: all.length === 1 ? (first?.then ?? '') : then,
    };
  });
}
