/** In reading order, column by column and about as long; a heading goes with what follows it. */
export function splitColumns<Item extends { readonly kind: string }>(
  items: readonly Item[],
  columns: number,
): readonly (readonly Item[])[] {
  const most = Math.ceil(items.length / Math.max(1, columns));
  const split: Item[][] = [[]];
  items.forEach((item, at) => {
    const column = split.at(-1) ?? [];
    const isFull = column.length >= most;
    const leadsAlone = item.kind === 'title' && column.length === most - 1 && at + 1 < items.length && most > 1;
    if ((isFull || leadsAlone) && split.length < columns) split.push([item]);
    else column.push(item);
  });
  return split.filter((column) => column.length > 0);
}
