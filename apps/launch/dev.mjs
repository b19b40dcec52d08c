// npm run dev: the server, built and started again at every change of the sources.
import './node-version.mjs';

import('./watch-sources.mjs').then(({ develop }) => develop());
