import type { FastifyReply } from 'fastify';

/** A picture is only ever shown as one: nothing in it can run, whatever a browser makes of it. */
export async function sendPhoto(
  reply: FastifyReply,
  id: string,
  { mediaType, bytes }: { mediaType: string; bytes: Uint8Array },
): Promise<void> {
  await reply
    .header('content-security-policy', "default-src 'none'; sandbox")
    .header('x-content-type-options', 'nosniff')
    .header('content-disposition', `inline; filename="photo-${id}.jpg"`)
    .type(mediaType)
    .send(Buffer.from(bytes));
}
