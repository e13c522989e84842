import { readdirSync, readFileSync, readlinkSync } from 'node:fs';

/**
 * The name and process id of the program that listens on a TCP port of this machine, where the system
 * tells it (Linux, and only of programs that this user may look at); else null. Never its arguments,
 * which may hold secrets.
 */
export function whoHoldsPort(port: number): string | null {
  try {
    const sockets = new Set(['/proc/net/tcp', '/proc/net/tcp6'].flatMap((table) => listeningSockets(table, port)));
    const holder = sockets.size === 0 ? undefined : processes().find((id) => holdsOneOf(id, sockets));
    return holder === undefined ? null : `${readFileSync(`/proc/${holder}/comm`, 'utf8').trim()} (process ${holder})`;
  } catch {
    // Another system, or a process that has just ended: then it can't be known, and the caller says so.
    return null;
  }
}

const LISTEN = '0A';

/** Inodes of the sockets that listen on the port, from a table of proc(5). */
function listeningSockets(table: string, port: number): string[] {
  const wanted = port.toString(16).toUpperCase().padStart(4, '0');
  return readFileSync(table, 'utf8')
    .split('\n')
    .map((line) => line.trim().split(/\s+/))
    .filter((columns) => columns[1]?.endsWith(`:${wanted}`) === true && columns[3] === LISTEN)
    .map((columns) => `socket:[${columns[9] ?? ''}]`);
}

const processes = (): string[] => readdirSync('/proc').filter((name) => /^\d+$/.test(name));

function holdsOneOf(process: string, sockets: ReadonlySet<string>): boolean {
  try {
    const folder = `/proc/${process}/fd`;
    return readdirSync(folder).some((file) => sockets.has(readlinkSync(`${folder}/${file}`)));
  } catch {
    // Another user's process: it can't be looked at.
    return false;
  }
}
