/** 127.0.0.0/8 (RFC 1122 section 3.2.1.3) and ::1 (RFC 4291 section 2.5.3), also as IPv4-mapped (section 2.5.5.2). */
export const isLoopbackAddress = (address: string): boolean => /^(::ffff:)?127\.\d+\.\d+\.\d+$|^::1$/.test(address);

/** A host to listen on that only this machine reaches. */
export const isLoopbackHost = (host: string): boolean => host === 'localhost' || isLoopbackAddress(host);
