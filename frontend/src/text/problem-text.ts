/** What a refused or failed request says to the person who made it. */
const byCode: { readonly [code: string]: string } = {
  REQUEST_TIMED_OUT: 'The server did not answer in time. Nothing is confirmed; look at the list, then try again.',
  REQUEST_NOT_SENT: 'The server can’t be reached. Nothing was confirmed.',
  REPLY_MALFORMED:
    'The server answered in a form this screen does not know. Reload the page; if it stays, tell the administrator.',
};

/** @param detail what the server said, shown where no better words are known */
export function problemText(code: string, detail: string): string {
  return byCode[code] ?? detail;
}
