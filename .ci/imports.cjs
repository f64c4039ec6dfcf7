// The import rule of the house (DEVELOPERS.md): imports run downward only, and never in a circle.
// Each room lists the rooms it may use; anything else it reaches for fails the build.
const rooms = {
  units: [],
  flight: ['units'],
  school: ['units'],
  drawing: ['flight', 'units'],
  lesson: ['school', 'units'],
  components: ['lesson', 'school', 'drawing', 'flight', 'units'],
  press: ['components', 'lesson', 'school', 'drawing', 'flight', 'units'],
  desk: ['press', 'components', 'lesson', 'school', 'drawing', 'flight', 'units'],
  cli: ['desk', 'press', 'components', 'lesson', 'school', 'drawing', 'flight', 'units'],
};
const folder = (room) => (room === 'components' ? '^components/' : `^src/${room}/`);

module.exports = {
  forbidden: [
    { name: 'no-circle', severity: 'error', from: {}, to: { circular: true } },
    { name: 'no-orphan-import', severity: 'error', from: {}, to: { couldNotResolve: true, pathNot: '^(hast|mdast|unist|geojson)$' } },
    ...Object.entries(rooms).map(([room, allowed]) => ({
      name: `${room}-imports-downward`,
      comment: `${room} may use: ${allowed.join(', ') || 'no other room'}`,
      severity: 'error',
      from: { path: folder(room), pathNot: '\\.test\\.ts$' },
      to: {
        path: '^(src|components|tests)/',
        pathNot: [room, ...allowed].map(folder),
      },
    })),
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
    enhancedResolveOptions: { extensions: ['.ts', '.js', '.mjs', '.cjs'], exportsFields: ['exports'], conditionNames: ['import', 'node', 'default', 'types'] },
  },
};
