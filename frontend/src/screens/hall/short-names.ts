/** Names without the words that all of them begin with: in a narrow row that leaves what tells them apart. */
export function shortNames(names: readonly string[]): readonly string[] {
  const [first, ...others] = names.map((name) => name.split(' '));
  if (first === undefined || others.length === 0) return names;
  let words = 0;
  while (words < first.length - 1 && others.every((name) => name.length > words + 1 && name[words] === first[words]))
    words += 1;
  return names.map((name) => name.split(' ').slice(words).join(' '));
}
