import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';

const zip = promisify(gzip);
const unzip = promisify(gunzip);

export const packText = async (text: string): Promise<Uint8Array<ArrayBuffer>> => Uint8Array.from(await zip(Buffer.from(text, 'utf8')));

export const unpackText = async (packed: Uint8Array): Promise<string> => (await unzip(packed)).toString('utf8');
