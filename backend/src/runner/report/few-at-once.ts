/** Runs all of the work, so many pieces at a time, and gives the results in their order. The first fault ends it. */
export async function fewAtOnce<Item, Value>(
  items: readonly Item[],
  most: number,
  work: (item: Item) => Promise<Value>,
): Promise<Value[]> {
  const results: Value[] = [];
  let next = 0;
  const turn = async (): Promise<void> => {
    while (next < items.length) {
      const at = next++;
      results[at] = await work(items[at] as Item);
    }
  };
  await Promise.all(Array.from({ length: Math.min(most, items.length) }, turn));
  return results;
}
