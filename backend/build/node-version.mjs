/** Ebbline needs Node 20.19 or newer; an older one is told so in one line. */
export function nodeVersionFault(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  return major > 20 || (major === 20 && minor >= 19)
    ? null
    : `Ebbline needs Node 20.19 or newer; this is ${version}. Install a newer Node and start again.`;
}
