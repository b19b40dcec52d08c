import { spawn } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { ensureBrowser } from './browser-install.mjs';
import { endSetUpOnSignals, failSetUp } from './child.mjs';
import { prepare } from './prepare.mjs';
import { say } from './say.mjs';

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'];

/** A test file that could not run holds no counted test, and must not pass for one. */
function summary(file) {
  try {
    const { numPassedTests, numFailedTests, numRuntimeErrorTestSuites } = JSON.parse(readFileSync(file, 'utf8'));
    return { passed: numPassedTests, failed: numFailedTests + numRuntimeErrorTestSuites };
  } catch {
    return { passed: 0, failed: 1 }; // Jest itself did not get to the end
  }
}

function runJest(args, browser) {
  return new Promise((resolve) => {
    const node = ['--experimental-vm-modules', '--disable-warning=ExperimentalWarning', 'node_modules/jest/bin/jest.js'];
    const env = { ...process.env, NODE_ENV: 'test', ...(browser ? { RUNWARM_BROWSER: browser } : {}) };
    const child = spawn(process.execPath, [...node, ...args], { stdio: 'inherit', env });
    let isBrokenOff = false;
    for (const signal of SIGNALS) {
      process.on(signal, () => {
        isBrokenOff = true;
        child.kill(signal);
      });
    }
    child.on('error', () => resolve({ code: 1, isBrokenOff }));
    child.on('exit', (code) => resolve({ code: code ?? 1, isBrokenOff }));
  });
}

/** What a broken-off test started for itself, other than the run's own server, is left without its process. */
async function clearUp() {
  const { importTypeScript } = await import('./bundle.mjs');
  const { clearDeadRuns } = await importTypeScript(
    'clear-dead-runs',
    `export { clearDeadRuns } from './tests/support/throw-away-server.ts';`,
  );
  await clearDeadRuns();
}

/** @param {string[]} args passed on to Jest */
export async function runTests(args) {
  process.chdir(path.resolve(import.meta.dirname, '../..'));
  const setUpIsOver = endSetUpOnSignals();
  let browser;
  try {
    await prepare();
    browser = await ensureBrowser();
  } catch (error) {
    failSetUp(error);
    say('0 passed, 1 failed');
    return;
  } finally {
    setUpIsOver();
  }
  const result = path.join(os.tmpdir(), `runwarm-test-result-${process.pid}.json`);
  const { code, isBrokenOff } = await runJest(
    [`--maxWorkers=${os.availableParallelism()}`, '--json', `--outputFile=${result}`, ...args],
    browser,
  );
  if (isBrokenOff) await clearUp();
  const { passed, failed } = summary(result);
  rmSync(result, { force: true });
  process.exitCode = code === 0 && failed > 0 ? 1 : code;
  say(`${passed} passed, ${failed} failed`);
}
