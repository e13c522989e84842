/**
 * Where Ebbline itself tells whether it listens: retained, `online` while it does, `offline` after it
 * ended or was lost (the broker publishes that one as its last will).
 */
export const statusTopic = (site: string): string => `ebbline/${site}/backend/status`;

export const ONLINE = 'online';
export const OFFLINE = 'offline';
