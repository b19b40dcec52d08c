import type { FastifyRequest } from 'fastify';
import type { DomainError } from '../domain-error.ts';

export interface UploadedFile {
  /** The field it was chosen in. */
  field: string;
  /** As its sender's machine calls it, without folders. */
  name: string;
  /** As its sender says; nobody has looked inside. */
  mediaType: string;
  bytes: Buffer;
}

export interface RequestFiles {
  files: readonly UploadedFile[];
  /** Why the upload can't be taken: thrown once it is known who sent it from where, so that a form keeps what was typed. */
  problem: DomainError | undefined;
}

const NONE: RequestFiles = { files: [], problem: undefined };
const known = new WeakMap<object, RequestFiles>();

export function setRequestFiles(request: FastifyRequest, files: RequestFiles): void {
  known.set(request.raw, files);
}

export const requestFiles = (request: FastifyRequest): RequestFiles => known.get(request.raw) ?? NONE;
