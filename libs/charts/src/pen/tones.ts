/** The inks and surfaces of the house, each with its page variable, its daylight colour and its colour on white paper. */
export const TONES = {
  floor: { variable: '--floor', day: '#D9E6DD', print: '#FFFFFF' },
  dim: { variable: '--dim', day: '#C3D4C9', print: '#DDE7E1' },
  sheet: { variable: '--sheet', day: '#FCFDFB', print: '#FFFFFF' },
  ink: { variable: '--ink', day: '#0F1F1A', print: '#0F1F1A' },
  ink2: { variable: '--ink2', day: '#3C4F47', print: '#3C4F47' },
  edge: { variable: '--edge', day: '#5C7167', print: '#5C7167' },
  line: { variable: '--line', day: '#9DB0A5', print: '#9DB0A5' },
  green: { variable: '--green', day: '#0A5A45', print: '#0A5A45' },
  lamp: { variable: '--lamp', day: '#FFD02B', print: '#FFD02B' },
  'on-lamp': { variable: '--on-lamp', day: '#0F1F1A', print: '#0F1F1A' },
  cold: { variable: '--cold', day: '#17568F', print: '#17568F' },
  hot: { variable: '--hot', day: '#A83305', print: '#A83305' },
  fits: { variable: '--fits', day: '#0A6640', print: '#0A6640' },
  no: { variable: '--no', day: '#A10F3D', print: '#A10F3D' },
  unsure: { variable: '--unsure', day: '#785000', print: '#785000' },
} as const;

/** The name of an ink or a surface. */
export type Tone = keyof typeof TONES;

/** Line widths that follow the light (sun makes them thicker), in daylight px. */
export const LINE_WIDTHS = {
  wall: { variable: '--wall', day: 5 },
  stroke: { variable: '--stroke', day: 2 },
  hair: { variable: '--hair', day: 1 },
} as const;

/** The name of a line width. */
export type LineWidth = keyof typeof LINE_WIDTHS;
