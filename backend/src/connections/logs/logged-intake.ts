import type { MessageSink } from '../../ports/message-sink';
import type { ProgramLog } from '../../ports/program-log';

/** Topic and field are told cut; the words around them are short. */
const SHOWN = 500;

/** The same sink; what it refuses is told with topic and reason, never with the payload. */
export const loggedIntake = (sink: MessageSink, log: ProgramLog): MessageSink => ({
  accept(message) {
    const acceptance = sink.accept(message);
    const { refusal } = acceptance;
    if (refusal !== null)
      log.write({
        level: 'warning',
        room: 'intake',
        code: refusal.code,
        message: () => printable(refusal.message),
      });
    return acceptance;
  },
});

/** On one line, and nothing that a terminal obeys: a topic may hold anything. */
const printable = (text: string): string => text.slice(0, SHOWN).replaceAll(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, '.');
