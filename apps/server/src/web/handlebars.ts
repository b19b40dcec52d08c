import Handlebars from 'handlebars';
import { newFormKey } from '../platform/access/form-marks.ts';

/** The engine with our few helpers: an asset's hashed address, a key for each form. Shaping belongs to presenters. */
export function createHandlebars(manifest: Readonly<Record<string, string>>): typeof Handlebars {
  const handlebars = Handlebars.create();
  handlebars.registerHelper('asset', (name: string) => manifest[name] ?? `/assets/missing/${name}`);
  handlebars.registerHelper('form-key', () => newFormKey());
  return handlebars;
}
