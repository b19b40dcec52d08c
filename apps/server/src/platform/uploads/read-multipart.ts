import type { FastifyRequest } from 'fastify';
import { cleanText } from '../clean-text.ts';
import { DomainError } from '../domain-error.ts';
import type { UploadedFile } from './request-files.ts';
import type { FileLimits } from './takes-files.decorator.ts';

const FIELD_LIMITS = { fields: 100, fieldSize: 64 * 1024, fieldNameSize: 100, headerPairs: 20 };
const MB = 1024 * 1024;

export interface ReadMultipart {
  fields: Record<string, string | string[]>;
  files: UploadedFile[];
  problem: DomainError | undefined;
}

const tooLarge = ({ field, name }: UploadedFile, mostBytes: number): DomainError => {
  const message = `“${name}” is larger than ${Math.floor((mostBytes / MB) * 10) / 10} MB, the most that is taken: send a shorter or smaller one.`;
  return new DomainError('too-large', 'file-too-large', message, { errors: [{ field, message }] });
};

const tooMuch = (): DomainError =>
  new DomainError('too-large', 'too-many-parts', 'There is more in this than is taken at once: send fewer files or shorter answers.');

const broken = (): DomainError =>
  new DomainError('malformed', 'broken-upload', 'The upload broke off or can’t be read. Choose the file and send it again.');

/**
 * The fields and files of a form with files. A file over its limit is read to its end and dropped, so that the answers behind it
 * are still had; what can't be taken is a `problem`, beside whatever could be read.
 *
 * @param keepsFiles false for a stranger: their files are thrown away as they come
 */
export async function readMultipart(
  request: FastifyRequest,
  { limits, keepsFiles }: { limits: FileLimits; keepsFiles: boolean },
): Promise<ReadMultipart> {
  const read: ReadMultipart = { fields: {}, files: [], problem: undefined };
  const { mostFiles, mostBytes } = limits;
  try {
    for await (const part of request.parts({
      limits: { ...FIELD_LIMITS, files: mostFiles, fileSize: keepsFiles ? mostBytes : 1, parts: FIELD_LIMITS.fields + mostFiles },
    })) {
      if (part.type === 'field') {
        if (part.valueTruncated || part.fieldnameTruncated) read.problem ??= tooMuch();
        addField(read.fields, part.fieldname, part.value);
        continue;
      }
      const bytes = await part.toBuffer();
      const name = cleanText(part.filename ?? '').slice(0, 200);
      const isChosen = name !== '' || bytes.length > 0; // an empty field of a form is sent as a file without a name
      if (!keepsFiles || !isChosen) continue;
      const file = { field: part.fieldname, name: name === '' ? 'The file' : name, mediaType: part.mimetype, bytes };
      if (part.file.truncated) read.problem ??= tooLarge(file, mostBytes);
      else read.files.push(file);
    }
  } catch (error) {
    read.problem ??= (error as { statusCode?: unknown }).statusCode === 413 ? tooMuch() : broken();
  }
  return read;
}

/** As the bodies of other forms: a field that comes more than once is a list. */
function addField(fields: ReadMultipart['fields'], name: string, value: unknown): void {
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  const before = fields[name];
  fields[name] = before === undefined ? text : [...(typeof before === 'string' ? [before] : before), text];
}
