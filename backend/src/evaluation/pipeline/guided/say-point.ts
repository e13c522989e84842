import { pointDefinition, splitPoint } from '@ebbline/shared/contract/point-table';

/** A point in words, such as “Branch flow, r1”; one that the site file can name with that name behind it. */
export function sayPoint(id: string): string {
  const title = pointDefinition(id)?.title;
  if (title === undefined) return id;
  const part = splitPoint(id);
  const said = `“${part === null ? title : `${title}, ${part.id}`}”`;
  return id.includes('.') ? `${said} (${id})` : said;
}
