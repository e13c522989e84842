/** Is there a process with this id (signal 0 asks and does nothing)? */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}
