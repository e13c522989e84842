import { formatMoment } from './format-time';

const isoTime = /\d{4}-\d{2}-\d{2}T[\d:.]+Z/g;

/** A sentence of the program, with the moments in it as this site reads them. */
export const sayTimes = (sentence: string, zone: string): string =>
  sentence.replace(isoTime, (moment) => formatMoment(moment, zone));
