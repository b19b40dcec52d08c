// Installs, builds and starts what a start needs, and can be stopped meanwhile.
import path from 'node:path';
import { endSetUpOnSignals, failSetUp } from './child.mjs';
import { prepare } from './prepare.mjs';

/** @returns {Promise<boolean>} false where a step failed, which has been said */
export async function setUp() {
  process.chdir(path.resolve(import.meta.dirname, '../..'));
  const setUpIsOver = endSetUpOnSignals();
  try {
    await prepare();
    return true;
  } catch (error) {
    failSetUp(error);
    return false;
  } finally {
    setUpIsOver();
  }
}
