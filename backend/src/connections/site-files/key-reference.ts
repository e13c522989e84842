import { pointTable } from '@ebbline/shared/contract/point-table';
import { siteFileKeys } from '@ebbline/shared/contract/site-file-keys';
import { unitsOfMeasure } from '@ebbline/shared/units/units-of-measure';
import { shippedTemplates } from './shipped-templates';

const cell = (text: string): string => text.replaceAll('|', '\\|');

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((row) => `| ${row.map(cell).join(' | ')} |`).join('\n');

/** The reference of the site file as Markdown, from the schema and the tables themselves. */
export function keyReference(): string {
  const keys = siteFileKeys().map(({ path, expects, needed, description }) => [
    `\`${path}\``,
    needed ? `${expects}; needed` : expects,
    description,
  ]);
  const units = unitsOfMeasure.map(({ id, quantities, source }) => [`\`${id}\``, quantities.join(', '), source]);
  const points = pointTable
    .filter(({ kind }) => kind === 'measured')
    .map(({ id, holder, quantity, title }) => [`\`${id}\``, holder, quantity, title]);
  const shipped = [...shippedTemplates.keys()].map((name) => `\`${name}\``).join(', ');
  return `# The site file

Generated from the schema by \`npm run site:check -- --keys\`; a test fails when it is stale.

YAML 1.2. Check a file with \`npm run site:check -- FILE\`: every fault is told at once, with line, key, and what is expected. Keys it does not know are refused. Every quantity is one text with its unit of measure (\`346 L/min\`, \`-0.5 m\`); \`°C\`, \`µS/cm\`, \`m³/h\` and \`gpm\` (US) may be written so.

## Keys

\`<id>\` is an id that the file chooses. Keys that a template may give to a unit are listed at the template; "needed" there means: in the unit or in its template.

${table(['key', 'expects', 'meaning'], keys)}

## Sensor sets

${shipped} come with Ebbline as templates of the same name: \`include: [usual]\` takes one in, \`template: usual\` gives it to units. Each expects one JSON object a unit on \`{site}/{hall}/{unit}\`, with \`time\` and, under \`values\`, the points by their ids; whatever differs is said again in the file, key by key. They lie in \`backend/site-templates\`. \`include\` also takes files beside the site file that hold \`templates\` and nothing else.

## Loops of several units

A unit that no loop lists is alone on one of its own. Units that share water are listed under \`loops\`, each unit on one loop, all in one hall:

\`\`\`yaml
loops:
  row-1: { name: Row 1, units: [m1, m2, m3], unitsNeeded: 2 }
\`\`\`

## Reload

The running program watches the file and what it includes. A good new content takes the place of the old one between two steps: points whose id and unit of measure are the same keep their values, alarms and delays go on, alarms of what is gone end with the reason "configuration". A faulty one is refused whole; the one before stays in force, and health says so with every fault. \`site.id\` can not change while the program runs.

## Measured points

${table(['point', 'of', 'quantity', 'title'], points)}

## Units of measure

For pressures \`reference\` says whether the number is absolute, gauge or vacuum. A level in \`%\` needs \`span\`; a speed in other units than \`%\` too. A flow in \`kg/s\` or \`kg/h\` needs \`density\`.

${table(['unit of measure', 'for', 'source'], units)}
`;
}
