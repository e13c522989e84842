type Query = Readonly<Record<string, unknown>>;

/** Which entries the list shows; its address holds both. */
export interface ListView {
  readonly search: string;
  /** Only those that run otherwise than authorised. */
  readonly differing: boolean;
}

const textOf = (query: Query, key: string): string => {
  const given = query[key];
  return typeof given === 'string' ? given : '';
};

export const readListAddress = (query: Query): ListView => ({
  search: textOf(query, 'search').slice(0, 200),
  differing: textOf(query, 'differing') === 'true',
});

export const writeListAddress = ({ search, differing }: ListView): Record<string, string> => ({
  ...(search === '' ? {} : { search }),
  ...(differing ? { differing: 'true' } : {}),
});

/** Of one entry: the unit it was come from, the trial that is shown, and the period that a trial is to have. */
export interface EntryView {
  readonly unit: string | null;
  readonly trial: string | null;
  readonly from: string | null;
  readonly to: string | null;
}

export function readEntryAddress(query: Query): EntryView {
  const orNull = (key: string): string | null => (textOf(query, key) === '' ? null : textOf(query, key));
  const time = (key: string): string | null => {
    const given = textOf(query, key);
    return Number.isNaN(Date.parse(given)) ? null : new Date(given).toISOString();
  };
  return { unit: orNull('unit'), trial: orNull('trial'), from: time('from'), to: time('to') };
}
