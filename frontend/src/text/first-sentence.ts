/** The first sentence of a text, whole: where there is no room for all, better a full sentence than a cut one. */
export function firstSentence(text: string): string {
  return /^.*?\.(?=\s+\p{Lu})/su.exec(text)?.[0] ?? text;
}
