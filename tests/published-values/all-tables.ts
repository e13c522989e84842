import type { PublishedTable } from './published-table';

/** Every `*.table.ts` of this folder: a new table needs no entry anywhere. */
export const allTables: readonly PublishedTable[] = Object.values(
  import.meta.glob<Record<string, PublishedTable>>('./*.table.ts', { eager: true }),
).flatMap((module) => Object.values(module));
