import { type IsoDate } from '../../document/invoice-document.ts';
import { branch, leaf, type XmlNode } from '../xml-node.ts';

/** A day as CII writes it: digits only, format 102. */
export function ciiDate(name: string, date: IsoDate | null | undefined, type = 'udt:DateTimeString'): XmlNode[] {
  return branch(name, leaf(type, date?.replaceAll('-', ''), { format: '102' }));
}
