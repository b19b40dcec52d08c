import { type Box, type Pen } from '../pen/pen.ts';
import { textWidth, type TypeSpec } from '../text/text-width.ts';

const PAD_PX = 6;

/** The box of a plate that holds a text, its middle at a point. */
export function plateBox(content: string, { x, y, ...type }: TypeSpec & { readonly x: number; readonly y: number }): Box {
  const width = textWidth(content, type) + PAD_PX * 2;
  const height = type.sizePx * 1.5;
  return { x: x - width / 2, y: y - height / 2, width, height };
}

/** A lamp plate: look here now. Always with an ink outline, since the lamp alone is no boundary. */
export function lampPlate(pen: Pen, content: string, { box, ...type }: TypeSpec & { readonly box: Box }): string {
  return (
    pen.rect(box, { fill: 'lamp', stroke: 'on-lamp' }) +
    pen.text(content, {
      ...type,
      x: box.x + box.width / 2,
      y: box.y + box.height / 2 + type.sizePx * 0.35,
      anchor: 'middle',
      tone: 'on-lamp',
    })
  );
}
