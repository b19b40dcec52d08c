import { urls } from '../../web/urls.ts';

/** Where an act on a piece is sent. @example unitActUrl('0190…', 'stock') // '/returns-shelf/units/0190…/stock' */
export const unitActUrl = (id: string, act: string): string => `${urls.unit(id)}/${act}`;
