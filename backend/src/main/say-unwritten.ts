/** The last word on history, once its store is closed: nobody can look at health then. */
export function sayUnwritten(rows: number, say: (line: string) => void): void {
  if (rows === 0) return;
  say(
    `History: ${rows} rows could not be written before the end and are lost. See to room and permissions of the data folder.`,
  );
}
