// Child processes of the set-up: quiet when they succeed, quoted when they fail, ended when we are told to stop.
import { spawn } from 'node:child_process';
import { say, seconds } from './say.mjs';

const QUOTED_LINES = 40;
const REMINDER_MS = 10_000;
const children = new Set();
let stopping;

/** A step that failed, with what to do about it; shown without a stack. */
export class SetUpError extends Error {}

export function endSetUpOnSignals() {
  const end = (signal) => {
    stopping = signal;
    for (const child of children) child.kill('SIGTERM');
    if (children.size === 0) process.exit(1);
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, end);
  return () => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.off(signal, end);
  };
}

/**
 * Runs one step of the set-up.
 * @param {string} doing said while it runs
 * @param {{ command: string, args: string[], env?: NodeJS.ProcessEnv, advice: string }} step
 */
export async function runStep(doing, { command, args, env = process.env, advice }) {
  const began = Date.now();
  say(`${doing} …`);
  const reminder = setInterval(() => say(`  … still at it after ${seconds(began)}`), REMINDER_MS);
  const output = [];
  const child = spawn(command, args, { env, stdio: ['ignore', 'pipe', 'pipe'] });
  children.add(child);
  const keep = (text) => output.push(text);
  child.stdout.setEncoding('utf8').on('data', keep);
  child.stderr.setEncoding('utf8').on('data', keep);
  const problem = await new Promise((resolve) => {
    child.on('error', (error) => resolve(error.message));
    child.on('close', (code, signal) => resolve(code === 0 ? undefined : `ended with ${signal ?? code}`));
  });
  clearInterval(reminder);
  children.delete(child);
  if (stopping) {
    say('Stopped during the set-up; the next start goes on from here.');
    process.exit(1);
  }
  if (problem === undefined) {
    say(`  done in ${seconds(began)}`);
    return;
  }
  const lines = output.join('').trimEnd().split('\n').slice(-QUOTED_LINES);
  throw new SetUpError(`${lines.join('\n')}\n\n${doing}: ${problem}.\n${advice}`);
}

/** Ends the process with the message of a failed step; anything else is a fault of ours and keeps its stack. */
export function failSetUp(error) {
  if (!(error instanceof SetUpError)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
