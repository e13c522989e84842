import type { Site } from '@ebbline/shared/contract/http-api';
import type { ReportChange, ReportSetAside } from '@ebbline/shared/contract/report';
import { formatMoment } from '../../text/format-time';
import { placeTitle } from '../../text/place-title';

/** Names of places and times as the people of the site have them. */
export interface ReportWords {
  readonly unit: (id: string | null) => string;
  readonly hall: (id: string | null) => string;
  readonly place: (of: { readonly unit: string | null; readonly where: string | null }) => string;
  /** `2031-05-06 09:08` */
  readonly at: (iso: string) => string;
  readonly siteUnit: (id: string | null) => Site['units'][number] | undefined;
}

export function reportWords(site: Site | null, zone: string): ReportWords {
  const siteUnit: ReportWords['siteUnit'] = (id) => site?.units.find((one) => one.id === id);
  const unit = (id: string | null): string => siteUnit(id)?.name ?? id ?? 'the site';
  return {
    siteUnit,
    unit,
    hall: (id) => (id === null ? 'the whole site' : (site?.halls.find((one) => one.id === id)?.name ?? id)),
    place: ({ unit: of, where }) =>
      [unit(of), where === null ? '' : placeTitle(where, siteUnit(of))].filter(Boolean).join(', '),
    at: (iso) => formatMoment(iso, zone).slice(0, 16),
  };
}

export const modeWordsOfAside: { readonly [M in ReportSetAside['mode']]: string } = {
  shelved: 'shelved',
  suppressedByDesign: 'off by design',
  outOfService: 'out of service',
};

export const changeWords: { readonly [K in ReportChange['kind']]: string } = {
  setting: 'setting',
  site: 'site file',
  permit: 'permit',
  setAside: 'set aside',
  hand: 'by hand',
  people: 'people',
  lineUp: 'line-up',
  demo: 'demo',
  program: 'Ebbline',
};
