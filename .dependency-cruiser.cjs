// The import rule of the house (DEVELOPERS.md): imports run downward only, and never in a circle.
// Each room lists the rooms it may use; anything else it reaches for fails the build.
const core = ['flight', 'units'];
const drawn = ['drawing', 'words', ...core];
const written = ['lesson', 'school', 'messages'];
const pages = ['press', 'components', ...written, ...drawn];
const rooms = {
  units: [],
  messages: [],
  flight: ['units'],
  words: core,
  drawing: ['words', ...core],
  school: ['messages', 'units', 'flight/terms'],
  lesson: ['school', 'messages', 'units', 'flight/terms'],
  components: [...written, ...drawn],
  press: ['components', ...written, ...drawn],
  checks: pages,
  export: pages,
  reference: pages,
  entries: ['export', ...pages],
  desk: ['reference', ...pages],
  cli: ['desk', 'checks', 'export', 'reference', ...pages],
};
// Inside the core the same holds: each folder may use those before it.
const flight = [
  'terms',
  'numerics',
  'air',
  'aircraft',
  'flying',
  'approaches',
  'plan',
  'questions',
  'faults',
];
const folder = (room) => (room === 'components' ? '^components/' : `^src/${room}/`);

module.exports = {
  forbidden: [
    { name: 'no-circle', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'no-orphan-import',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true, pathNot: '^(hast|mdast|unist|geojson)$' },
    },
    ...Object.entries(rooms).map(([room, allowed]) => ({
      name: `${room}-imports-downward`,
      comment: `${room} may use: ${allowed.join(', ') || 'no other room'}`,
      severity: 'error',
      from: { path: folder(room), pathNot: '\\.test\\.ts$' },
      to: { path: '^(src|components|tests)/', pathNot: [room, ...allowed].map(folder) },
    })),
    ...flight.map((name, i) => ({
      name: `flight-${name}-imports-downward`,
      comment: `flight/${name} may use: ${flight.slice(0, i).join(', ') || 'no other folder of the core'}`,
      severity: 'error',
      from: { path: `^src/flight/${name}/`, pathNot: '\\.test\\.ts$' },
      to: { path: '^src/flight/', pathNot: flight.slice(0, i + 1).map((each) => `^src/flight/${each}/`) },
    })),
    {
      name: 'every-room-has-its-rule',
      comment: 'a new folder of src/ is a room: say above what it may use',
      severity: 'error',
      from: { path: '^src/', pathNot: Object.keys(rooms).map(folder) },
      to: {},
    },
    {
      name: 'component-has-no-private-parts-for-others',
      comment:
        'of a directive others read its definition alone; what several need lies beside the list, in components/',
      severity: 'error',
      from: { path: '^(src/|components/[^/]+\\.ts$)', pathNot: '\\.test\\.ts$' },
      to: { path: '^components/[^/]+/', pathNot: '^components/([^/]+)/\\1\\.ts$' },
    },
    {
      name: 'component-imports-no-other',
      comment: 'what two directives need lies beside the list, in components/',
      severity: 'error',
      from: { path: '^components/([^/]+)/' },
      to: { path: '^components/[^/]+/', pathNot: '^components/$1/' },
    },
    {
      name: 'flight-is-pure',
      comment: 'the core runs unchanged in a browser: no files, no clock, no DOM, no package',
      severity: 'error',
      from: { path: '^src/(flight|units)/', pathNot: '\\.test\\.ts$' },
      to: { dependencyTypes: ['core', 'npm', 'npm-dev', 'npm-optional'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      extensions: ['.ts', '.js', '.mjs', '.cjs'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
    },
  },
};
