/** What is told while the program starts and ends: words by themselves, or one JSON object a line with `EBBLINE_LOG=json`. */
const json = process.env.EBBLINE_LOG === 'json';

const lineOf = (level, code, message) =>
  json ? JSON.stringify({ time: new Date().toISOString(), level, room: 'start', code, message }) : message;

/** @param {string} line @param {string} [code] */
export const say = (line, code = 'START') => void process.stdout.write(`${lineOf('info', code, line)}\n`);

/** @param {string} line @param {string} [code] */
export const complain = (line, code = 'START_FAULT') => void process.stderr.write(`${lineOf('error', code, line)}\n`);

/** A line that is whole already. @param {string} line @param {'info' | 'warning' | 'error'} level */
export const print = (line, level) => void (level === 'info' ? process.stdout : process.stderr).write(`${line}\n`);

/** A reader that has ended is no reason to end: what is told to nobody is dropped. Any other fault of a stream is told once on the other. */
function outlive(stream, name, other) {
  let told = false;
  stream.on('error', ({ code, message }) => {
    if (code === 'EPIPE' || told) return;
    told = true;
    const why = `The ${name} takes no lines (${code ?? message}); what is told there is lost, and the program runs on.`;
    other.write(`${lineOf('error', 'LINES_LOST', why)}\n`);
  });
}
outlive(process.stdout, 'standard output', process.stderr);
outlive(process.stderr, 'error output', process.stdout);
