export { saveFile } from '../../components/save-file';

/** `trend-2026-11-26-150000-to-160000.csv`, in the site's zone. @param from @param to `2026-11-26 15:00:00` */
export const fileName = (from: string, to: string, ending: 'csv' | 'png'): string =>
  `trend-${from} to ${to}.${ending}`.replaceAll(':', '').replaceAll(' ', '-');
