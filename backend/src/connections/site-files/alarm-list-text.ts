import { stringify } from 'yaml';

const head = `# The list of alarms as it runs, to be approved: see backend/docs/alarm-list.md.
# Write a version, who approves it and on which day, as 2031-05-28; until then it is refused.
`;

/** A list as YAML, with who approved it left open: for a person to fill in. */
export const alarmListText = ({ site, entries }: { readonly site: string; readonly entries: object }): string =>
  head + stringify({ site, version: null, approvedBy: null, approvedOn: null, entries }, { nullStr: '', lineWidth: 0 });
