import { besideInUs } from './beside-in-us';

const unitNext = /(\d) (?=[°%]|(?:k?Pa|k?W|mm|min|K|L|m|s|h)\b)/g;

/** A sentence in which a number and its unit stay on one line, in US units too for who reads them. */
export const bindUnits = (sentence: string): string => besideInUs(sentence).replace(unitNext, '$1\u00a0');
