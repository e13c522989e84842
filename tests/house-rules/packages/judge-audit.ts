import { z } from 'zod';
import type { AuditAnswer } from './audit-answers';

/** Of the report of `npm audit --json`, version 2, what is judged. */
const reportSchema = z.object({
  auditReportVersion: z.literal(2),
  vulnerabilities: z.record(
    z.string(),
    z.object({
      name: z.string(),
      nodes: z.array(z.string()),
      /** A text names another package that carries the finding here. */
      via: z.array(z.union([z.string(), z.object({ url: z.string(), title: z.string(), severity: z.string() })])),
    }),
  ),
});

/** What is wrong: a finding at a path without an answer, an answer that has expired, or one that answers nothing. */
export function judgeAudit(report: unknown, answers: readonly AuditAnswer[], today: string): readonly string[] {
  const { vulnerabilities } = reportSchema.parse(report);
  const findings = Object.values(vulnerabilities).flatMap(({ name, nodes, via }) =>
    via.flatMap((cause) => (typeof cause === 'string' ? [] : nodes.map((path) => ({ name, path, ...cause })))),
  );
  const isAnswerTo = (answer: AuditAnswer, { name, path, url }: (typeof findings)[number]): boolean =>
    answer.package === name && answer.path === path && answer.advisory === url;
  return [
    ...findings
      .filter((finding) => !answers.some((answer) => isAnswerTo(answer, finding)))
      .map(({ path, severity, title, url }) => `${path}: ${title} (${severity}, ${url}): renew it, or answer it`),
    ...answers
      .filter((answer) => !findings.some((finding) => isAnswerTo(answer, finding)))
      .map(({ path, advisory }) => `${path}: the answer to ${advisory} answers nothing any more: take it away`),
    ...expiredAnswers(answers, today),
  ];
}

/** Also where no registry can be asked: a belief that has run out is none. */
export const expiredAnswers = (answers: readonly AuditAnswer[], today: string): readonly string[] =>
  answers
    .filter(({ until }) => !/^\d{4}-\d\d-\d\d$/.test(until) || until < today)
    .map(({ path, advisory, until }) => `${path}: the answer to ${advisory} ran out on ${until}: judge it anew`);
