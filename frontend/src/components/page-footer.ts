/** What stands at the foot of every printed page. */
export interface FooterWords {
  readonly left: string;
  readonly right: string;
}

const quoted = (text: string): string => `"${text.replace(/[\\"]/g, '\\$&').replace(/\s+/g, ' ')}"`;

/** Rules of the printed page with its foot: what is on it changes with the report, so they are made here and not in a file. */
export const footerRules = ({ left, right }: FooterWords): string =>
  `@page { @bottom-left { content: ${quoted(left)}; } @bottom-right { content: ${quoted(right)} " · " counter(page) " / " counter(pages); } }`;
