import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const packageFile = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const limits = JSON.parse(readFileSync(join(root, '.config/limits.json'), 'utf8'));

/** Left out of a bundle that does not call it, though its package does not say that it may be. */
const prunable = {
  name: 'prunable',
  setup({ onResolve, resolve }) {
    onResolve({ filter: /^@kninnug\/constrainautor$/ }, async ({ path, pluginData, ...from }) => {
      if (pluginData === 'asked') return undefined;
      const found = await resolve(path, { ...from, pluginData: 'asked' });
      return { ...found, sideEffects: false };
    });
  },
};

/** Descriptions of the evaluator's own functions, a tenth of its size: our catalogue has its own words. */
const undescribed = {
  name: 'undescribed',
  setup({ onLoad }) {
    onLoad(
      { filter: /hyperformula[\\/]\w+[\\/]interpreter[\\/]functionMetadata[\\/]index\.m?js$/ },
      ({ path }) => {
        const docs = 'Object.create(null)';
        return {
          contents: path.endsWith('.mjs')
            ? `export const FUNCTION_DOCS = ${docs};`
            : `exports.FUNCTION_DOCS = ${docs};`,
        };
      },
    );
  },
};

const shared = {
  absWorkingDir: root,
  bundle: true,
  minify: true,
  metafile: true,
  target: 'es2022',
  logLevel: 'warning',
  legalComments: 'none',
  plugins: [prunable, undescribed],
  loader: { '.toml': 'text', '.svg': 'text' },
  define: { 'process.env.NODE_ENV': '"production"' },
};

/** What is shipped: where it starts, how it is bundled, and which sources may be in it. */
const bundles = [
  {
    file: 'dist/extension.cjs',
    entry: 'extension/host/activate.ts',
    // One bundle serves desktop and browser, so it is built for the poorer of the two; both read UTF-8.
    options: { platform: 'browser', format: 'cjs', external: ['vscode'], charset: 'utf8' },
    holds:
      /^(extension\/(host|protocol|engine|worker\/messages)|node_modules\/(hyperformula|smol-toml|fflate|clipper2-ts|svgpath|@rgrove|delaunator|@kninnug|robust-predicates|chevrotain|tiny-emitter|@chevrotain|regexp-to-ast)\/?)/,
    outside: ['vscode'],
  },
  {
    file: 'dist/worker.js',
    entry: 'extension/worker/main.ts',
    options: { platform: 'browser', format: 'iife' },
    holds:
      /^(extension\/(worker|engine)|node_modules\/(delaunator|@kninnug\/constrainautor|robust-predicates|clipper2-ts))\//,
    outside: [],
  },
  {
    file: 'dist/webview.js',
    entry: 'webview/main.ts',
    options: { platform: 'browser', format: 'iife' },
    holds: /^(webview|extension\/protocol)\//,
    outside: [],
  },
  { file: 'dist/webview.css', options: {}, holds: /^webview\/styles\//, outside: [] },
  {
    file: 'dist/ui-kit.js',
    entry: 'webview/ui-kit.ts',
    options: { platform: 'browser', format: 'iife' },
    holds: /^(webview\/|node_modules\/@vscode\/webview-ui-toolkit\/)/,
    outside: [],
  },
  {
    file: 'dist/panelwright.cjs',
    entry: 'extension/command-line/main.ts',
    options: { platform: 'node', format: 'cjs', banner: { js: '#!/usr/bin/env node' } },
    holds: /^(extension\/(command-line|engine)\/|node_modules\/)/,
    outside: [/^node:/],
  },
  {
    // git starts it once for every file it merges, so it holds nothing that a merge can do without.
    file: 'dist/merge-driver.cjs',
    entry: 'extension/command-line/merge-main.ts',
    options: { platform: 'node', format: 'cjs', banner: { js: '#!/usr/bin/env node' } },
    holds:
      /^(extension\/(command-line\/|engine\/(sharing|job|formula|units|result|problems))|node_modules\/smol-toml\/)/,
    outside: [/^node:/],
  },
];

function allowed(path, list) {
  return list.some((item) => (typeof item === 'string' ? item === path : item.test(path)));
}

/** Sentences for what a bundle holds or asks for but must not. */
function impurities(bundle, metafile) {
  const strangers = Object.keys(metafile.inputs).filter((input) => !bundle.holds.test(input));
  const outsiders = Object.values(metafile.outputs)
    .flatMap((output) => output.imports)
    .filter((used) => used.external && !allowed(used.path, bundle.outside))
    .map((used) => used.path);
  return [
    ...strangers.map((input) => `${bundle.file} must not hold ${input}`),
    ...[...new Set(outsiders)].map((path) => `${bundle.file} must not need ${path}`),
  ];
}

function oversize(file) {
  const limit = limits[file];
  const size = statSync(join(root, file)).size;
  if (limit === undefined) return [`${file} has no size limit in .config/limits.json`];
  return size > limit ? [`${file} has ${size} bytes; its limit is ${limit}`] : [];
}

function packagesIn(metafiles) {
  const names = metafiles
    .flatMap((metafile) => Object.keys(metafile.inputs))
    .map((input) => /node_modules\/((?:@[^/]+\/)?[^/]+)\/(?!.*node_modules\/)/.exec(input)?.[1])
    .filter((name) => name !== undefined);
  return [...new Set(names)].sort();
}

/** The licences of what is bundled travel with the bundles. */
function notices(metafiles) {
  return packagesIn(metafiles)
    .map((name) => {
      const folder = join(root, 'node_modules', name);
      const about = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
      const licence = ['LICENSE', 'LICENSE.md', 'LICENSE.txt', 'LICENCE', 'license']
        .map((file) => join(folder, file))
        .find((path) => statSync(path, { throwIfNoEntry: false }) !== undefined);
      const text =
        about.license === 'GPL-3.0-only' || licence === undefined
          ? 'See LICENSE of this extension.'
          : readFileSync(licence, 'utf8').trim();
      return `${name} ${about.version} (${about.license})\n\n${text}\n`;
    })
    .join(`\n${'-'.repeat(80)}\n\n`);
}

/** One style sheet of all the webview's, in the order of their names. */
function styleSheet() {
  const names = readdirSync(join(root, 'webview/styles')).filter((name) => name.endsWith('.css'));
  return {
    stdin: {
      contents: names
        .sort()
        .map((name) => `@import './${name}';`)
        .join('\n'),
      resolveDir: join(root, 'webview/styles'),
      loader: 'css',
      sourcefile: 'webview/styles/all.css',
    },
  };
}

async function buildOne(bundle) {
  const made = await build({
    ...shared,
    ...bundle.options,
    define: { ...shared.define, PANELWRIGHT_VERSION: JSON.stringify(packageFile.version) },
    ...(bundle.entry === undefined ? styleSheet() : { entryPoints: [bundle.entry] }),
    outfile: bundle.file,
  });
  const files = Object.keys(made.metafile.outputs);
  return {
    metafile: made.metafile,
    faults: [...impurities(bundle, made.metafile), ...files.flatMap(oversize)],
  };
}

/** Builds everything into dist/; the answer lists what is wrong with it. */
export async function buildAll() {
  rmSync(join(root, 'dist'), { recursive: true, force: true });
  const made = [];
  const broken = [];
  for (const bundle of bundles) {
    try {
      made.push(await buildOne(bundle));
    } catch (fault) {
      // The bundler has told its errors already.
      if (!Array.isArray(fault.errors)) throw fault;
      broken.push(`${bundle.file} could not be built`);
    }
  }
  mkdirSync(join(root, 'dist'), { recursive: true });
  writeFileSync(join(root, 'dist/NOTICES.txt'), notices(made.map((one) => one.metafile)));
  return [...broken, ...made.flatMap((one) => one.faults)];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const faults = await buildAll();
  for (const fault of faults) console.error(fault);
  if (faults.length > 0) process.exitCode = 1;
}
