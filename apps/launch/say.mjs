/** One plain line of progress. */
export const say = (line) => console.log(line);

export const seconds = (since) => `${((Date.now() - since) / 1000).toFixed(1)} s`;
