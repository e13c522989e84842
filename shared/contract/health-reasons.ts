/**
 * Every reason for which the program is degraded, or not ready: its stable code, what it means, and what to do. Codes are never
 * reused.
 */
export const healthReasons = {
  BROKER_LOST: {
    means: 'the broker is not reached; it is tried again for ever',
    action: 'See that it runs, that its address is right, and that it lets Ebbline in.',
  },
  NO_SAMPLES: {
    means: 'the broker is reached, and no sample was accepted for 30 s',
    action: 'See at /api/intake what comes in and why it is refused; see whether the gateways send.',
  },
  HISTORY_FAILING: {
    means: 'the history store takes no rows; they wait in memory or in its queue, and would be lost with the program',
    action: 'See that the history server runs, or that the disk of the data folder has room and may be written to.',
  },
  HISTORY_BEHIND: {
    means: 'rows that were put aside while the history server was away are being written',
    action: 'Nothing: it ends by itself. If it does not, the history server is too slow for the site.',
  },
  HISTORY_ROWS_LOST: {
    means: 'since the start rows of history were lost; told until the next start',
    action: 'Note the period that is told: charts lack it. See to room for the queue, or why a block was damaged.',
  },
  HISTORY_WRITE_FAILED: {
    means: 'the last rows of history were refused',
    action: 'Free room on the disk of the data folder, or see to the history server; rows that wait are written then.',
  },
  HISTORY_UPKEEP_FAILED: {
    means: 'old history could not be sealed or removed',
    action: 'See to room and permissions of the data folder; it is tried again within a minute.',
  },
  HISTORY_DAMAGED: {
    means: 'a file of history is missing or can’t be read; the rest of history can be',
    action: 'Put the file back from a back-up; look after the disk, since damage seldom comes alone.',
  },
  JOURNAL_FAILING: {
    means: 'the journal refuses writes; alarms go on in memory, nothing can be acknowledged',
    action: 'Keep Ebbline running; free room on the disk of the data folder and see that it may be written to.',
  },
  JOURNAL_UPKEEP_FAILED: {
    means: 'old rows of the journal could not be sealed into a file; they stay where they are',
    action: 'See to room and permissions of the data folder; it is tried again within ten minutes.',
  },
  PEOPLE_FAILING: {
    means: 'what was last changed of people, sessions or tokens could not be written; who is signed in stays so',
    action: 'Free room on the disk of the data folder and see that it may be written to; then sign in again.',
  },
  MEMORY_FAILED: {
    means: 'what was learnt is not kept over a restart',
    action: 'See to room and permissions of the data folder; it is tried again within five minutes.',
  },
  SITE_FILE_REFUSED: {
    means: 'a newer content of the site file was refused; the one before is in force',
    action:
      'Mend what /api/site/state names: a mended file is read by itself; where the file is not at fault, read it again in Setup.',
  },
  SETTINGS_REFUSED: {
    means: 'settings changed while running do not fit the site file that runs now; they are not in force',
    action: 'See which and why at /api/alarm-list/audit; set them anew at the same place, or set there what runs.',
  },
  CLOCK_STEPPED: {
    means: 'the clock of the machine was stepped by more than 2 s since the start, or the machine stood still',
    action:
      'See that the clock of the machine is right, then start Ebbline anew: it takes the time from it at the start.',
  },
  EVALUATION_LATE: {
    means: 'slices are judged late, and so every alarm comes late',
    action: 'Give Ebbline more processor time: see what else runs on the machine.',
  },
  ANSWERS_LATE: {
    means: 'the program’s own thread comes late to its work',
    action: 'See what else runs on the machine, and at /api/intake whether a sender floods the broker.',
  },
  DISK_FILLING: {
    means: 'the disk of the data folder has little room left',
    action: 'Find what takes the room and move it away, or make the disk larger; leave the data folder itself alone.',
  },
  BROKER_AWAITED: {
    means: 'not ready: the broker has not answered since the start',
    action: 'Wait some seconds; /api/health says when it is not reached.',
  },
  NOT_JUDGING: {
    means: 'not ready: the program starts or ends, and does not judge the plant',
    action: 'Wait, or start Ebbline anew.',
  },
} as const satisfies Readonly<Record<string, { readonly means: string; readonly action: string }>>;

export type HealthReasonCode = keyof typeof healthReasons;
export const healthReasonCodes = Object.keys(healthReasons) as [HealthReasonCode, ...HealthReasonCode[]];

/** What a part of the program tells: the code, and what it knows of this very case. */
export interface HealthFinding {
  readonly code: HealthReasonCode;
  readonly message: string;
}

/** The same as it is told to a person: with what to do. */
export const toHealthReason = ({ code, message }: HealthFinding): HealthFinding & { readonly action: string } => ({
  code,
  message,
  action: healthReasons[code].action,
});
