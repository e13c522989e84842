/** A name as it is shown: one space where there was any white space, no character that is not seen or that turns text around. */
export const shownName = (typed: string): string =>
  typed
    // First, since what they stood between comes together: blanks to one, a letter and its accent to another letter.
    .replace(/(?!\s)[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Cn}]/gu, '')
    .replace(/\s+/gu, ' ')
    .normalize('NFC')
    .trim();

/** What two names must not have in common: compatible characters and upper and lower case are the same (Unicode UAX #15, NFKC). */
export const nameKey = (typed: string): string => shownName(shownName(typed).normalize('NFKC').toLowerCase());
