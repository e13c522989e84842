/** What the Report screen shows; its address holds all of it. */
export interface ReportView {
  /** null: the whole site */
  readonly hall: string | null;
  /** null: the shift that runs now */
  readonly period: { readonly from: string; readonly to: string } | null;
}

type Query = Readonly<Record<string, unknown>>;
const textOf = (query: Query, key: string): string => {
  const given = query[key];
  return typeof given === 'string' ? given : '';
};

export function readReportAddress(query: Query): ReportView {
  const hall = textOf(query, 'hall');
  const [from, to] = [Date.parse(textOf(query, 'from')), Date.parse(textOf(query, 'to'))];
  return {
    hall: hall === '' ? null : hall,
    period: to > from ? { from: new Date(from).toISOString(), to: new Date(to).toISOString() } : null,
  };
}

export const writeReportAddress = ({ hall, period }: ReportView): Record<string, string> => ({
  ...(hall === null ? {} : { hall }),
  ...(period === null ? {} : { from: period.from, to: period.to }),
});
