import type { ServerResponse } from 'node:http';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';

/** What is sent piece by piece, as fast as the other end takes it. */
export interface StreamedFile {
  readonly contentType: string;
  /** Under which name a browser keeps it: letters, digits, dots and dashes. */
  readonly fileName: string;
  readonly pieces: AsyncIterable<string>;
}

/** Sends a file; where the other end goes away, no more pieces are made. */
export async function sendStream(
  response: ServerResponse,
  { contentType, fileName, pieces }: StreamedFile,
): Promise<void> {
  response.setHeader('Content-Type', contentType);
  response.setHeader('Content-Disposition', `attachment; filename="${fileName}"`);
  try {
    await pipeline(Readable.from(pieces, { objectMode: true, highWaterMark: 1 }), response);
  } catch (fault) {
    // Whoever went away is told nothing; the connection is closed already.
    if (!response.destroyed) throw fault;
  }
}
