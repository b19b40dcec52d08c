// npm test: sets up what is missing, then runs every test. Needs nothing but Node.
import './node-version.mjs';

import('./run-tests.mjs').then(({ runTests }) => runTests(process.argv.slice(2)));
