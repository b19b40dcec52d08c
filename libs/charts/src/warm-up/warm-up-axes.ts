import { horizontalGraduation, verticalGraduation } from '../marks/graduation.ts';
import { coordinate } from '../pen/element.ts';
import { type Pen } from '../pen/pen.ts';
import { formatFigure } from '../text/format-figure.ts';
import { type WarmUpFrame } from './warm-up-frame.ts';

const LINE = (frame: WarmUpFrame, y: number): string => `M${frame.left} ${coordinate(y)}H${frame.right}`;

/** The band round the nominal temperature: its edges are limits, so chain lines; the stamp itself is known, so solid. */
export function warmUpBand(pen: Pen, frame: WarmUpFrame, nominalC: number | null): string {
  const { band, yOf, left, right } = frame;
  if (band === null || nominalC === null) return '';
  const [top, bottom] = [yOf(band.high), yOf(band.low)];
  return (
    pen.part('band', pen.rect({ x: left, y: top, width: right - left, height: bottom - top }, { fill: pen.band })) +
    pen.path(LINE(frame, top) + LINE(frame, bottom), { stroke: 'green', dash: 'limit' }) +
    pen.path(LINE(frame, yOf(nominalC)), { stroke: 'green', width: 1 })
  );
}

/** Both axes, graduated, with light lines across at the labelled temperatures. */
export function warmUpAxes(pen: Pen, frame: WarmUpFrame): string {
  const { left, right, top, bottom, axisY, xOf, yOf, minutes, temps, typePx, band } = frame;
  const isInBand = (tempC: number): boolean => band !== null && tempC >= band.low && tempC <= band.high;
  const across = temps.ticks.filter((tempC) => yOf(tempC) < bottom - 1 && !isInBand(tempC));
  return (
    pen.path(across.map((tempC) => LINE(frame, yOf(tempC))).join(''), { stroke: 'line', width: 'hair' }) +
    verticalGraduation(pen, {
      at: left,
      place: yOf,
      ticks: temps.ticks,
      minorTicks: temps.minorTicks,
      label: (tempC) => formatFigure(tempC),
      sizePx: typePx,
    }) +
    pen.path(`M${left} ${top}V${bottom}`, { stroke: 'ink' }) +
    pen.text('°C', { x: left - 16, y: top - 4, sizePx: 14, anchor: 'end', tone: 'ink2' }) +
    pen.path(`M${left} ${axisY}H${right}`, { stroke: 'ink' }) +
    horizontalGraduation(pen, {
      at: axisY,
      place: xOf,
      ticks: minutes.ticks,
      minorTicks: minutes.minorTicks,
      label: (minute) => formatFigure(minute),
      sizePx: typePx,
    }) +
    pen.text('minutes from the start', { x: right, y: axisY + 14 + typePx * 1.05 + 20, sizePx: 14, anchor: 'end', tone: 'ink2' })
  );
}
