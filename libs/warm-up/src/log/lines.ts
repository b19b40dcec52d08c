/** A text with the places where its lines begin and end; nothing is copied until a line is asked for. */
export interface Lines {
  text: string;
  starts: Int32Array;
  ends: Int32Array;
  count: number;
}

const NEW_LINE = '\n';
const RETURN = '\r';
const RETURN_CODE = 13;
const LINES_PER_CHARACTER = 1 / 24;

/** Finds the lines of a text with any of the usual line ends. */
export function findLines(text: string): Lines {
  const end = text.includes(NEW_LINE) ? NEW_LINE : RETURN;
  let starts = new Int32Array(Math.ceil(text.length * LINES_PER_CHARACTER) + 16);
  let ends = new Int32Array(starts.length);
  let count = 0;
  let from = 0;
  while (from <= text.length) {
    const found = text.indexOf(end, from);
    const to = found < 0 ? text.length : found;
    if (count === starts.length) {
      starts = grown(starts);
      ends = grown(ends);
    }
    starts[count] = from;
    ends[count] = to > from && text.charCodeAt(to - 1) === RETURN_CODE ? to - 1 : to;
    count += 1;
    from = to + 1;
  }
  return { text, starts, ends, count };
}

function grown(places: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(places.length * 2);
  larger.set(places);
  return larger;
}

/** One line as text, without its line end; empty beyond the last. */
export function lineText({ text, starts, ends, count }: Lines, index: number): string {
  return index >= 0 && index < count ? text.slice(starts[index], ends[index]) : '';
}
