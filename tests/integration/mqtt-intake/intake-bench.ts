import { brokerAddress } from '../../../backend/src/connections/mqtt-intake/broker-address';
import { HeldAcknowledgements } from '../../../backend/src/connections/mqtt-intake/held-acknowledgements';
import { MqttIntake, type IntakeSettings } from '../../../backend/src/connections/mqtt-intake/mqtt-intake';
import type { RawMessage } from '../../../backend/src/evaluation/pipeline/inputs';
import type { Acceptance } from '../../../backend/src/evaluation/sample/acceptance';
import { ManualClock } from '@ebbline/shared/clock/manual-clock';

export interface IntakeUnderTest {
  readonly intake: MqttIntake;
  readonly gate: HeldAcknowledgements;
  /** Payloads as text, in the order in which they were handed on. */
  readonly taken: string[];
  readonly messages: RawMessage[];
  start(): Promise<void>;
  stop(): Promise<void>;
}

const accepted: Acceptance = { accepted: 1, late: 0, repeated: 0, newestSourceMs: 0, refusal: null, refused: 0 };

/** The real intake with a sink that takes everything, and a gate that the test opens. */
export function intakeOn(url: string, settings: Partial<IntakeSettings> = {}): IntakeUnderTest {
  const gate = new HeldAcknowledgements();
  const messages: RawMessage[] = [];
  const taken: string[] = [];
  const sink = {
    accept: (message: RawMessage): Acceptance => {
      messages.push(message);
      taken.push(Buffer.from(message.payload).toString('utf8'));
      return accepted;
    },
  };
  const full: IntakeSettings = {
    address: brokerAddress(url),
    clientId: 'ebbline0123456789abcdef',
    tlsFiles: null,
    statusTopic: 'ebbline/test/backend/status',
    maximumPacketBytes: 1_048_576,
    subscriptions: ['hall/#'],
    ownTopics: null,
    note: null,
    random: () => 0.999,
    ...settings,
  };
  const intake = new MqttIntake(full, sink, gate, new ManualClock(Date.UTC(2031, 0, 1)));
  return { intake, gate, taken, messages, start: () => intake.start(), stop: () => intake.stop() };
}
