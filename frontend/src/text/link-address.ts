/** The whole address of a link that the server told as a path with its fragment. */
export const linkAddress = (path: string, origin: string = location.origin): string => new URL(path, origin).href;
