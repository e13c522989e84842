/** What a fault says for a person, with what lies behind it, without code and stack. */
export function messageOf(fault: unknown): string {
  if (!(fault instanceof Error)) return String(fault);
  const said = fault.message.replace(/^[A-Z_]+: /, '').split('\n')[0] ?? '';
  return fault.cause instanceof Error ? `${said} (${messageOf(fault.cause)})` : said;
}
