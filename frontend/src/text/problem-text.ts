/** What a refused or failed request says to the person who made it. */
const byCode: { readonly [code: string]: string } = {
  REQUEST_TIMED_OUT: 'The server did not answer in time. Nothing is confirmed; look at the list, then try again.',
  REQUEST_NOT_SENT: 'The server can’t be reached. Nothing was confirmed.',
  READING_TIMED_OUT: 'The server did not answer in time.',
  READING_NOT_SENT: 'The server can’t be reached.',
  SIGN_IN_NEEDED: 'You are no longer signed in, so nothing was done. Sign in again; what you typed is still here.',
  CSRF_MISSING:
    'Your sign-in was renewed meanwhile, in another window perhaps. Nothing was done; what you typed is still here: send it again.',
  ACTOR_DIFFERS:
    'Someone else is signed in in this browser by now. Nothing was done; look at whose name stands beside the button.',
  REPLY_MALFORMED:
    'The server answered in a form this screen does not know. Reload the page; if it stays, tell the administrator.',
};

/** @param detail what the server said, shown where no better words are known */
export function problemText(code: string, detail: string): string {
  return byCode[code] ?? detail;
}
