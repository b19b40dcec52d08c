const started = Date.now();

/** One plain line of progress. */
export function say(line) {
  console.log(line);
}

export const seconds = (since = started) => `${((Date.now() - since) / 1000).toFixed(1)} s`;
