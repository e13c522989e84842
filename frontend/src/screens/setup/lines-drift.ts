/** A line of a point, and the hall or unit under which it stands. */
interface PointLine {
  readonly holder: string;
  readonly line: string;
}

/** What was chosen otherwise since a text was taken over to be edited, as far as that text does not say it already. */
export interface LinesDrift {
  readonly missing: readonly PointLine[];
  readonly left: readonly PointLine[];
}

/** @param from the lines as chosen when the text was taken over  @param to as chosen now  @param text as edited since */
export function linesDrift(from: string, to: string, text: string): LinesDrift {
  const [before, now, own] = [from, to, text].map(pointLines) as [PointLine[], PointLine[], PointLine[]];
  const without = (lines: readonly PointLine[], others: readonly PointLine[]): readonly PointLine[] =>
    lines.filter((one) => !has(others, one));
  return {
    missing: without(without(now, before), own),
    left: without(before, now).filter((one) => has(own, one)),
  };
}

const has = (lines: readonly PointLine[], { holder, line }: PointLine): boolean =>
  lines.some((one) => one.holder === holder && one.line === line);

/** The lines of points as `linesOf` indents them: six spaces, under a holder at two. */
function pointLines(text: string): PointLine[] {
  let holder = '';
  return text.split('\n').flatMap((row) => {
    const named = /^ {2}(\S.*):\s*$/.exec(row);
    if (named !== null) holder = named[1] ?? '';
    const line = /^ {6}([^#\s].*?)\s*$/.exec(row)?.[1];
    return line === undefined ? [] : [{ holder, line }];
  });
}
