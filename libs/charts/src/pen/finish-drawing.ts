import { type DataTable, type Drawing, type DrawingOptions } from '../drawing.ts';
import { escapeXml } from '../text/escape-xml.ts';
import { element } from './element.ts';
import { FONT_FAMILIES } from './pen.ts';

interface Sheet {
  readonly title: string;
  /** One or two sentences that say what the picture shows. */
  readonly description: string;
  readonly table: DataTable;
  readonly heightPx: number;
  readonly body: string;
}

const NOTHING_YET = 'Nothing to show yet; an example is drawn dashed.';

/** Puts the frame round a drawing: size, name and description for those who don't see it, the table behind it. */
export function finishDrawing({ title, description, table, heightPx, body }: Sheet, options: DrawingOptions): Drawing {
  const { idPrefix, palette, widthPx } = options;
  const titleId = `${idPrefix}-title`;
  const descriptionId = `${idPrefix}-desc`;
  const height = Math.ceil(heightPx);
  const told = description === '' ? NOTHING_YET : description;
  const svg = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: palette === 'page' ? 'chart' : undefined,
      role: 'img',
      'aria-labelledby': `${titleId} ${descriptionId}`,
      width: widthPx,
      height,
      viewBox: `0 0 ${widthPx} ${height}`,
      'font-family': FONT_FAMILIES.text,
    },
    element('title', { id: titleId }, escapeXml(title)) + element('desc', { id: descriptionId }, escapeXml(told)) + body,
  );
  return { svg, title, table };
}
