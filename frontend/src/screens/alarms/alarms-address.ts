import type { Priority } from '@ebbline/shared/contract/alarm';

/** How a person has answered an alarm so far, as far as a list is narrowed by it. */
export const answers = ['waiting', 'seen', 'gone'] as const;
export type Answer = (typeof answers)[number];

/** To what an alarm list is narrowed; its address holds all of it. */
export interface AlarmsView {
  readonly hall: string | null;
  readonly unit: string | null;
  /** Empty: all. */
  readonly priorities: readonly Priority[];
  readonly answer: Answer | null;
  readonly text: string;
}

export const everything: AlarmsView = { hall: null, unit: null, priorities: [], answer: null, text: '' };

type Query = Readonly<Record<string, unknown>>;
const priorities: readonly Priority[] = [1, 2, 3];

/** One text of an address; empty where it holds none, or several. */
export function textOf(query: Query, key: string): string {
  const given = query[key];
  return typeof given === 'string' ? given.trim() : '';
}

export function readAlarmsAddress(query: Query): AlarmsView {
  const unit = textOf(query, 'unit');
  const hall = textOf(query, 'hall');
  const asked = textOf(query, 'priority').split(',');
  return {
    unit: unit === '' ? null : unit,
    hall: unit !== '' || hall === '' ? null : hall,
    priorities: priorities.filter((one) => asked.includes(String(one))),
    answer: answers.find((one) => one === textOf(query, 'state')) ?? null,
    text: textOf(query, 'text'),
  };
}

export const writeAlarmsAddress = ({
  hall,
  unit,
  priorities: of,
  answer,
  text,
}: AlarmsView): Record<string, string> => ({
  ...(unit !== null ? { unit } : hall !== null ? { hall } : {}),
  ...(of.length === 0 ? {} : { priority: of.join(',') }),
  ...(answer === null ? {} : { state: answer }),
  ...(text === '' ? {} : { text }),
});

export const isNarrowed = (view: AlarmsView): boolean => Object.keys(writeAlarmsAddress(view)).length > 0;
