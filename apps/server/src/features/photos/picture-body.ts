import type { IncomingMessage } from 'node:http';
import { MOST_SENT_BYTES } from './develop/develop-picture.ts';
import { pictureMissing, pictureTooLarge } from './photos.errors.ts';

const tooLarge = (): Error => pictureTooLarge(MOST_SENT_BYTES / 1024 / 1024);

/**
 * The bytes of a request whose body is a picture, read only now that its sender is known and may send one.
 *
 * @throws picture-too-large, at the latest when more than that has arrived; picture-missing
 */
export async function pictureBody(request: IncomingMessage): Promise<Buffer> {
  if (Number(request.headers['content-length'] ?? 0) > MOST_SENT_BYTES) throw tooLarge();
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    length += part.length;
    if (length > MOST_SENT_BYTES) throw tooLarge();
    parts.push(part);
  }
  if (length === 0) throw pictureMissing();
  return Buffer.concat(parts);
}
