/** Path of a browser that runs; undefined when there is none yet, so ask again. */
export function findBrowser(): Promise<string | undefined>;
/** For a browser that speaks to us alone. */
export const QUIET_ARGS: string[];
/** What a person can do where there is none. */
export function browserAdvice(): string;
/** Whether Puppeteer must be told `headless: 'shell'`. */
export function isHeadlessShell(file: string): boolean;
