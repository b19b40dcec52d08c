// Views that a tablet draws by itself: compiled here, so that the browser needs neither a compiler nor `eval`.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import Handlebars from 'handlebars';

const root = 'apps/server/src';
const VIEWS = {
  card: 'features/job-cards/views/card.hbs',
  cars: 'features/tablets/views/cars.hbs',
  lock: 'features/tablets/views/lock.hbs',
  sent: 'web/partials/sent-line.hbs',
};

/** The partials that a view draws, and theirs. */
function partialsOf(source, found = new Map()) {
  for (const [, name] of source.matchAll(/\{\{#?> ?([a-z][a-z-]*)/g)) {
    if (found.has(name) || source.includes(`{{#*inline "${name}"}}`)) continue;
    const text = readFileSync(path.join(root, 'web/partials', `${name}.hbs`), 'utf8');
    found.set(name, text);
    partialsOf(text, found);
  }
  return found;
}

function moduleOf() {
  const views = Object.entries(VIEWS).map(([name, file]) => [name, readFileSync(path.join(root, file), 'utf8')]);
  const partials = partialsOf(views.map(([, text]) => text).join('\n'));
  const compiled = (list) =>
    `{${[...list].map(([name, text]) => `${JSON.stringify(name)}: template(${Handlebars.precompile(text)})`).join(',\n')}}`;
  return `import runtime from 'handlebars/dist/cjs/handlebars.runtime.js';
const handlebars = runtime.create();
const { template } = handlebars;
handlebars.registerHelper('form-key', () => '');
handlebars.registerPartial(${compiled(partials)});
const views = ${compiled(views)};
export const draw = (name, view) => views[name](view);`;
}

/** For esbuild: `import { draw } from 'views-for-browser'`. */
export const viewsForBrowser = {
  name: 'views-for-browser',
  setup(build) {
    build.onResolve({ filter: /^views-for-browser$/ }, () => ({ path: 'views', namespace: 'views-for-browser' }));
    build.onLoad({ filter: /.*/, namespace: 'views-for-browser' }, () => ({
      contents: moduleOf(),
      loader: 'js',
      resolveDir: process.cwd(),
    }));
  },
};
