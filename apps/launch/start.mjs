// npm start: sets up what is missing, then runs the server. Needs nothing but Node.
import './node-version.mjs';

import('./start-server.mjs').then(({ start }) => start());
