/** The remaining length of a packet takes four bytes at most (MQTT 3.1.1, section 2.2.3). */
const LENGTH_BYTES = 4;

/** Follows the lengths of MQTT packets through a stream of bytes, and holds none of them (MQTT 3.1.1, section 2.2). */
export class PacketLengths {
  /** Bytes of the present packet that are still to come; −1 while its length is read, −2 before its first byte. */
  private toCome = -2;
  private length = 0;
  private lengthBytes = 0;

  constructor(private readonly longest: number) {}

  /** False as soon as a packet says that it is longer than allowed, or tells its length in no way there is. */
  allows(chunk: Uint8Array): boolean {
    let i = 0;
    while (i < chunk.length) {
      if (this.toCome > 0) {
        const passed = Math.min(this.toCome, chunk.length - i);
        i += passed;
        this.toCome -= passed;
        if (this.toCome === 0) this.toCome = -2;
      } else if (this.toCome === -2) {
        i += 1;
        this.toCome = -1;
        this.length = 0;
        this.lengthBytes = 0;
      } else if (!this.takeLengthByte(chunk[i++] ?? 0)) {
        return false;
      }
    }
    return true;
  }

  private takeLengthByte(byte: number): boolean {
    this.length += (byte & 0x7f) * 128 ** this.lengthBytes;
    this.lengthBytes += 1;
    if (this.length > this.longest) return false;
    if (byte >= 0x80) return this.lengthBytes < LENGTH_BYTES;
    this.toCome = this.length === 0 ? -2 : this.length;
    return true;
  }
}
