import type { HeardPlaceShown, MappingProposal } from '@ebbline/shared/contract/mapping';

/** A place by its name, for choices that outlast a new answer of the server. */
export const placeKeyOf = ({ topic, path }: Pick<HeardPlaceShown, 'topic' | 'path'>): string =>
  [topic, ...path].join('\u0000');

/** As people read it. */
export const placeText = ({ topic, path }: Pick<HeardPlaceShown, 'topic' | 'path'>): string =>
  path.length === 0 ? topic : `${topic} → ${path.join(' → ')}`;

/** A proposal by what it is, since its place among the others changes as more is heard. */
export const proposalKeyOf = ({ kind, holder, point }: MappingProposal): string => `${kind} ${holder} ${point}`;

/** What is chosen where nobody has chosen: what is likely, and nothing that is merely possible. */
export function chosenOf(place: HeardPlaceShown, chosen: ReadonlyMap<string, string>): MappingProposal | null {
  const wanted = chosen.get(placeKeyOf(place));
  if (wanted !== undefined) return place.proposals.find((one) => proposalKeyOf(one) === wanted) ?? null;
  const [first] = place.proposals;
  return first?.grade === 'likely' ? first : null;
}

/** Ids that YAML would read as something else than a text. */
const needsQuotes = /^(?:\d.*|true|false|yes|no|on|off|null|y|n)$/i;
const idText = (id: string): string => (needsQuotes.test(id) ? `'${id}'` : id);

/** Lines of a site file, hall by hall and unit by unit; what has to be put in stands above each. Empty where nothing is chosen. */
export function linesOf(proposals: readonly MappingProposal[]): string {
  const lines: string[] = [];
  for (const kind of ['hall', 'unit'] as const) {
    const ofKind = proposals.filter((one) => one.kind === kind);
    if (ofKind.length > 0) lines.push(`${kind}s:`);
    for (const holder of new Set(ofKind.map((one) => one.holder))) {
      lines.push(`  ${idText(holder)}:`, '    points:');
      for (const { line, needs } of ofKind.filter((one) => one.holder === holder))
        lines.push(...needs.map((need) => `      # put in – ${need}`), `      ${line}`);
    }
  }
  return lines.length === 0 ? '' : `${lines.join('\n')}\n`;
}
