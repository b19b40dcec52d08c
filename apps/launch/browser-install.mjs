// Looks for a browser and, where there is none, gets one: Puppeteer's own download, else Debian's package when we are root.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { browserAdvice, findBrowser } from './browser.mjs';
import { say } from './say.mjs';

function succeeds(command, args, signal) {
  return new Promise((resolve) => {
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    const child = spawn(command, args, { env, stdio: 'ignore', signal, timeout: 300_000 });
    child.on('error', () => resolve(false));
    child.on('exit', (code) => resolve(code === 0));
  });
}

const download = (signal) =>
  succeeds(
    process.execPath,
    ['node_modules/puppeteer/lib/cjs/puppeteer/node/cli.js', 'browsers', 'install', 'chrome-headless-shell'],
    signal,
  );

async function debianPackage(signal) {
  if (process.getuid?.() !== 0 || !existsSync('/etc/debian_version')) return false;
  // One mirror that doesn't answer must not hold up the rest, so a failed update is no reason to give up.
  await succeeds('apt-get', ['update', '-qq'], signal);
  return succeeds('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium-headless-shell'], signal);
}

/**
 * @param {{ signal?: AbortSignal }} [options]
 * @returns {Promise<string | undefined>} its path
 */
export async function ensureBrowser({ signal } = {}) {
  let file = await findBrowser();
  if (file !== undefined || process.env.RUNWARM_BROWSER) {
    if (file === undefined) say(browserAdvice());
    return file;
  }
  say('No browser for PDFs yet: getting one (a minute or two; everything else works meanwhile) …');
  for (const get of [download, debianPackage]) {
    if (signal?.aborted) return undefined;
    await get(signal);
    file = await findBrowser();
    if (file !== undefined) {
      say(`PDFs are printed by ${file}`);
      return file;
    }
  }
  if (!signal?.aborted) say(`No browser could be installed. ${browserAdvice()}`);
  return undefined;
}
