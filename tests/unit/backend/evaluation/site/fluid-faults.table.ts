import type { FaultRow } from './fault-row';

const fluid = (title: string, value: object, part: string | null, message: RegExp): FaultRow => [
  title,
  ['templates', 'typeM', 'fluid'],
  value,
  `templates.typeM.fluid${part === null ? '' : `.${part}`}`,
  message,
];
const glycol = (more: object) => ({ kind: 'propyleneGlycol', ...more });

/** What flows in the loop. */
export const fluidFaults: readonly FaultRow[] = [
  fluid('another liquid', { kind: 'oil' }, 'kind', /water/),
  fluid('glycol of no source', glycol({ volumeFraction: '25 %' }), 'source', /ashrae or melinder2010/),
  fluid('glycol of no share', glycol({ source: 'ashrae' }), 'volumeFraction', /volumeFraction or massFraction/),
  fluid(
    'glycol by mass and by volume',
    glycol({ source: 'ashrae', massFraction: '25 %', volumeFraction: '25 %' }),
    'volumeFraction',
    /25 % by mass is 24.4 % by volume/,
  ),
  fluid('a share without its unit', glycol({ source: 'ashrae', volumeFraction: '25' }), 'volumeFraction', /%/),
  fluid(
    'more glycol than the tables hold',
    glycol({ source: 'ashrae', volumeFraction: '65 %' }),
    'volumeFraction',
    /ashrae holds for volume fraction 10 … 60 %/,
  ),
  fluid(
    'less glycol than Melinder measured',
    glycol({ source: 'melinder2010', volumeFraction: '10 %' }),
    'volumeFraction',
    /melinder2010 holds for mass fraction 15 … 57 %/,
  ),
  fluid('a share of water', { kind: 'water', massFraction: '25 %' }, 'massFraction', /propyleneGlycol only/),
  // The small site returns at about 45 °C; Melinder (2010) ends at 40 °C.
  fluid(
    'a loop warmer than its source reaches',
    glycol({ source: 'melinder2010', massFraction: '25 %' }),
    null,
    /known from -45 to 40 °C .* choose a source that reaches there/,
  ),
];
