import type { MessageSink } from '../../ports/message-sink';
import type { ProgramLog } from '../../ports/program-log';

/** A topic may be 65,535 bytes long and hold anything; its start tells enough. */
const TOPIC_SHOWN = 100;

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
        message: () => `${printable(message.topic)}: ${refusal.message}`,
      });
    return acceptance;
  },
});

const printable = (topic: string): string =>
  topic.slice(0, TOPIC_SHOWN).replaceAll(/[^ -~]/g, '.') + (topic.length > TOPIC_SHOWN ? '…' : '');
