/**
 * Who may import whom. Each folder of the engine may use itself, the base (result, problems) and the
 * folders listed here; what is not listed is refused.
 */
const engineFolders = {
  units: [],
  geometry: ['units'],
  drawing: ['units', 'geometry'],
  formula: ['units', 'geometry'],
  job: ['units', 'formula'],
  sharing: ['units', 'formula', 'job'],
  book: ['units', 'formula', 'job'],
  template: ['units', 'formula', 'job', 'book'],
  trade: ['units', 'geometry', 'formula'],
  skin: ['units', 'geometry', 'formula', 'trade'],
  cutting: ['units', 'geometry', 'drawing'],
  workbook: ['units', 'geometry', 'formula', 'job', 'book', 'trade', 'skin'],
  panel: ['units', 'geometry', 'drawing', 'formula', 'job', 'book', 'trade', 'skin', 'workbook'],
  estimate: [
    'units',
    'geometry',
    'drawing',
    'formula',
    'job',
    'book',
    'template',
    'trade',
    'skin',
    'cutting',
    'workbook',
  ],
  export: ['units', 'geometry', 'drawing', 'job', 'sharing', 'cutting', 'panel', 'estimate'],
  session: [
    'units',
    'geometry',
    'drawing',
    'formula',
    'job',
    'sharing',
    'book',
    'template',
    'trade',
    'skin',
    'cutting',
    'workbook',
    'panel',
    'estimate',
    'export',
  ],
  shop: [
    'units',
    'geometry',
    'formula',
    'job',
    'book',
    'cutting',
    'workbook',
    'estimate',
    'session',
  ],
};

const engine = '^extension/engine/';
const base = `${engine}(result|problems|steps|text-files\\.d)\\.ts$`;
const vscode = '^vscode$|/@types/vscode/';

function refused(name, comment, from, to) {
  return { name, severity: 'error', comment, from, to };
}

const engineRules = Object.entries(engineFolders).map(([folder, mayUse]) =>
  refused(
    `engine-${folder}`,
    `engine/${folder} may import ${['the base', ...mayUse].join(', ')} and itself`,
    { path: `${engine}${folder}/` },
    {
      path: engine,
      pathNot: [
        base,
        `${engine}(${[folder, ...mayUse].join('|')})/`,
        // Exports print the answers of the workbook but never ask it for more.
        ...(folder === 'export' ? [`${engine}workbook/answers\\.ts$`] : []),
      ],
    },
  ),
);

/** A package that one place alone may import. */
function onlyFrom(name, packageName, place) {
  return refused(
    name,
    `${packageName} is imported by ${place} alone`,
    { path: '^(extension|webview)/', pathNot: place },
    { path: `(^|/)node_modules/${packageName}/|^${packageName}$` },
  );
}

module.exports = {
  forbidden: [
    refused('no-cycles', 'No module waits for itself', {}, { circular: true }),
    refused(
      'resolvable',
      'Every import leads somewhere',
      {},
      { couldNotResolve: true, pathNot: vscode },
    ),
    refused(
      'engine-base',
      'result, problems and steps stand on nothing',
      { path: base },
      { path: engine, pathNot: base },
    ),
    ...engineRules,
    refused(
      'engine-new-folder',
      'A new folder of the engine needs a line in .config/dependency-cruiser.cjs',
      { path: `${engine}(?!(${Object.keys(engineFolders).join('|')})/)[^/]+/` },
      {},
    ),
    refused(
      'engine-inside',
      'The engine imports itself and its listed libraries only',
      { path: engine },
      {
        pathNot: [
          engine,
          '^node_modules/(hyperformula|smol-toml|fflate|clipper2-ts|delaunator|@kninnug/constrainautor|@rgrove/parse-xml|svgpath)/',
        ],
      },
    ),
    onlyFrom('hyperformula-in-workbook', 'hyperformula', `${engine}workbook/`),
    onlyFrom('fflate-in-xlsx', 'fflate', `${engine}export/xlsx/`),
    onlyFrom('toml-in-job', 'smol-toml', `${engine}job/`),
    onlyFrom('clipper-in-geometry', 'clipper2-ts', `${engine}geometry/`),
    onlyFrom('delaunator-in-skin', 'delaunator', `${engine}skin/`),
    onlyFrom('constrainautor-in-skin', '@kninnug/constrainautor', `${engine}skin/`),
    onlyFrom('xml-in-geometry', '@rgrove/parse-xml', `${engine}geometry/`),
    onlyFrom('svgpath-in-geometry', 'svgpath', `${engine}geometry/`),
    onlyFrom(
      'toolkit-in-controls',
      '@vscode/webview-ui-toolkit',
      '^webview/(controls|ui-kit)\\.ts$',
    ),
    refused(
      'vscode-in-host',
      'Only the host knows VS Code',
      { path: '^(extension|webview)/', pathNot: '^extension/host/' },
      { path: vscode },
    ),
    refused(
      'protocol',
      'The protocol imports itself and types of the engine’s front door',
      { path: '^extension/protocol/' },
      { pathNot: ['^extension/protocol/', `${engine}index\\.ts$`] },
    ),
    refused(
      'protocol-types-only',
      'The protocol carries no engine code into the webview',
      { path: '^extension/protocol/' },
      { path: engine, dependencyTypesNot: ['type-only'] },
    ),
    refused(
      'worker',
      'The worker imports itself and the engine',
      { path: '^extension/worker/' },
      { pathNot: ['^extension/worker/', engine] },
    ),
    refused(
      'host',
      'The host imports itself, the protocol, the engine’s front door, the worker’s messages and vscode; it is free of Node',
      { path: '^extension/host/' },
      {
        pathNot: [
          '^extension/(host|protocol)/',
          `${engine}index\\.ts$`,
          '^extension/worker/messages\\.ts$',
          vscode,
        ],
      },
    ),
    refused(
      'command-line',
      'The program imports itself, the engine’s front door and Node; the merge driver, which must start at once, its own part of the engine',
      { path: '^extension/command-line/' },
      {
        pathNot: [
          '^extension/command-line/',
          `${engine}index\\.ts$`,
          `${engine}sharing/merge-(jobs|setup)\\.ts$`,
        ],
        dependencyTypesNot: ['core'],
      },
    ),
    refused(
      'webview',
      'The webview imports itself, the protocol and its control library',
      { path: '^webview/' },
      { pathNot: ['^webview/', '^extension/protocol/', '/@vscode/webview-ui-toolkit/'] },
    ),
    refused(
      'tests-unseen',
      'Nothing shipped imports a test',
      { path: '^(extension|webview)/' },
      { path: '^tests/' },
    ),
    refused(
      'no-dev-in-shipped',
      'Shipped code imports no development package',
      { path: '^(extension|webview)/' },
      {
        dependencyTypes: ['npm-dev', 'npm-optional', 'npm-peer', 'npm-no-pkg', 'npm-unknown'],
        pathNot: vscode,
      },
    ),
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(dist|coverage)/|\\.cache/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      extensions: ['.ts', '.js', '.d.ts'],
      conditionNames: ['import', 'node', 'default'],
      exportsFields: ['exports'],
    },
  },
};
