/** A name as it is shown: one space where there was any white space, no character that is not seen or that turns text around. */
export const shownName = (typed: string): string =>
  typed
    .normalize('NFC')
    .replace(/\s+/gu, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Cn}]/gu, '')
    .trim();

/** What two names must not have in common: compatible characters and upper and lower case are the same (Unicode UAX #15, NFKC). */
export const nameKey = (typed: string): string => shownName(shownName(typed).normalize('NFKC').toLowerCase());
