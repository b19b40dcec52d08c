// The browser that prints the PDFs: found here, installed by browser-install.mjs.
import { execFile } from 'node:child_process';
import { accessSync, constants, existsSync, readdirSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';

// The headless shell first: it starts and prints faster, in a third of the memory.
const COMMANDS = [
  'chromium-headless-shell',
  'chrome-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'chrome',
  'microsoft-edge',
];
/** For a browser that speaks to us alone. */
export const QUIET_ARGS = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const APPLICATIONS = {
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [process.env.PROGRAMFILES, process.env['PROGRAMFILES(X86)'], process.env.LOCALAPPDATA]
    .filter(Boolean)
    .flatMap((dir) => [`${dir}\\Google\\Chrome\\Application\\chrome.exe`, `${dir}\\Microsoft\\Edge\\Application\\msedge.exe`]),
};
const DOWNLOADED = /^(chrome-headless-shell|chrome|chromium|Google Chrome for Testing)(\.exe)?$/;

function isExecutable(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** A launcher that only says how to install the real browser (as some systems have) doesn't count. */
function runs(file) {
  if (process.platform === 'win32') return Promise.resolve(true); // prints no version there
  return new Promise((resolve) => {
    execFile(file, ['--version'], { timeout: 15_000 }, (error, stdout) => resolve(!error && /\d+\.\d+/.test(stdout)));
  });
}

function inPath() {
  const dirs = (process.env.PATH ?? '').split(path.delimiter).filter(Boolean);
  return COMMANDS.flatMap((command) => [...dirs, '/usr/bin', '/snap/bin', '/opt/google/chrome'].map((dir) => path.join(dir, command)));
}

/** Puppeteer's own downloads, newest first. */
function downloaded() {
  const cache = process.env.PUPPETEER_CACHE_DIR || path.join(os.homedir(), '.cache', 'puppeteer');
  return ['chrome-headless-shell', 'chrome'].flatMap((browser) => {
    const dir = path.join(cache, browser);
    if (!existsSync(dir)) return [];
    return readdirSync(dir, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && DOWNLOADED.test(entry.name))
      .map((entry) => path.join(entry.parentPath ?? entry.path, entry.name))
      .sort((a, b) => b.localeCompare(a, 'en', { numeric: true }));
  });
}

let found;

/**
 * Path of a browser that runs: RUNWARM_BROWSER, else an installed one, else one that Puppeteer downloaded.
 * Undefined when there is none (yet: it may be installed at any time, so ask again).
 * @returns {Promise<string | undefined>}
 */
export async function findBrowser() {
  const told = process.env.RUNWARM_BROWSER;
  if (told) return (await runs(told)) ? told : undefined;
  if (found !== undefined && isExecutable(found)) return found;
  for (const file of new Set([...inPath(), ...(APPLICATIONS[process.platform] ?? []), ...downloaded()])) {
    if (isExecutable(file) && (await runs(file))) return (found = file);
  }
  return undefined;
}

/** What a person can do where there is none. */
export function browserAdvice() {
  if (process.env.RUNWARM_BROWSER) return `RUNWARM_BROWSER is ${process.env.RUNWARM_BROWSER}, which does not run: correct it, or unset it.`;
  const command =
    process.platform === 'linux' && existsSync('/etc/debian_version')
      ? 'sudo apt-get install -y chromium-headless-shell (on Ubuntu: install Google Chrome)'
      : 'npx puppeteer browsers install chrome-headless-shell';
  return `PDFs need a browser of the Chromium family. Install one: ${command}. Or set RUNWARM_BROWSER to its path.`;
}

/** Whether it is the headless shell, which Puppeteer must be told (headless: 'shell'). */
export const isHeadlessShell = (file) => /headless[-_]shell/.test(path.basename(file));
