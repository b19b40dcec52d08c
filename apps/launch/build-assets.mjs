// Styles and scripts for the browser, named by their content; dist/public/manifest.json leads from the plain name to the path.
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';
import { viewsForBrowser } from './views-for-browser.mjs';

const source = 'apps/server/assets';
const out = 'dist/public/assets';
const common = {
  bundle: true,
  minify: true,
  target: ['es2022'],
  tsconfig: `${source}/tsconfig.json`,
  conditions: ['source'],
  metafile: true,
  plugins: [viewsForBrowser],
  logLevel: 'warning',
};
const FILES = ['.woff2', '.woff', '.svg', '.png', '.webp', '.ico'];

const withLoader = (loader) => Object.fromEntries(FILES.map((extension) => [extension, loader]));
const existing = (files) => files.map((file) => path.join(source, file)).filter((file) => existsSync(file));
const pageScripts = () => {
  const dir = path.join(source, 'pages');
  return existsSync(dir)
    ? readdirSync(dir)
        .filter((name) => /(?<!\.d|\.spec)\.ts$/.test(name))
        .map((name) => path.join(dir, name))
    : [];
};

function readManifest({ outputs }) {
  const manifest = {};
  for (const [file, { entryPoint }] of Object.entries(outputs)) {
    if (!entryPoint || !/\.(css|js)$/.test(file)) continue;
    const name = path.basename(entryPoint).replace(/\.ts$/, '.js');
    if (manifest[name]) throw new Error(`Two assets are named ${name}: rename one of them`);
    manifest[name] = `/assets/${path.relative(out, file)}`;
  }
  return manifest;
}

/** Fonts of the Latin script: what the tablet needs to look right offline. */
function latinFonts({ outputs }) {
  return Object.keys(outputs)
    .filter((file) => /-latin-\d+-\w+\.[A-Z0-9]+\.woff2$/.test(file))
    .map((file) => `/assets/${path.relative(out, file)}`);
}

async function buildWorker(precache) {
  const [worker] = existing(['tablet/sw.ts']);
  if (!worker) return;
  await build({
    ...common,
    entryPoints: [worker],
    outfile: 'dist/public/sw.js',
    format: 'iife',
    define: { __PRECACHE__: JSON.stringify(precache), __VERSION__: JSON.stringify(precache.join()) },
  });
}

/** For PDFs the same style sheet with its fonts inside: that renderer may fetch nothing. */
async function buildPrintStyle() {
  const [style] = existing(['print.css']);
  if (style) await build({ ...common, entryPoints: [style], outfile: 'dist/print/print.css', loader: withLoader('dataurl') });
}

export async function buildAssets() {
  mkdirSync(out, { recursive: true });
  const entryPoints = [...existing(['site.css', 'print.css', 'tablet/tablet.ts']), ...pageScripts()];
  const { metafile } = await build({
    ...common,
    sourcemap: true,
    entryPoints,
    outdir: out,
    format: 'esm',
    entryNames: '[name].[hash]',
    assetNames: '[name].[hash]',
    loader: withLoader('file'),
  });
  const manifest = readManifest(metafile);
  const forTablet = ['site.css', 'tablet.js'].map((name) => manifest[name]).filter(Boolean);
  await buildWorker(['/tablet/shell', ...forTablet, ...latinFonts(metafile)]);
  await buildPrintStyle();
  writeFileSync('dist/public/manifest.json', `${JSON.stringify(manifest, null, 2)}\n`);
}
