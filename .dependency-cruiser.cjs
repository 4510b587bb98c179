// Who may import whom: weather-io ← sim-core ← reports. Run by `pnpm run architecture` and by tests/architecture.

/** Modules of Node itself. */
const node = { dependencyTypes: ['core'] };
/** Parts that only a Node program imports: the command line, files of a study's workers. */
const NODE_ONLY =
  '^packages/(weather-io/src/bytes\\.ts|sim-core/src/study/node/|reports/src/(cli|command)(/|\\.ts)|[^/]+/schema/)';

/** Rooms of sim-core, ground floor first. */
const FLOORS = [['input', 'design'], ['physics'], ['define'], ['year'], ['study', 'advice']];

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    {
      name: 'weather-knows-no-tanks',
      comment: 'weather-io stands alone: it imports neither of the other packages.',
      severity: 'error',
      from: { path: '^packages/weather-io/' },
      to: { path: '^(packages/(sim-core|reports)/|@noonloop/(sim-core|reports))' },
    },
    {
      name: 'physics-knows-no-reports',
      comment: 'sim-core imports weather-io alone.',
      severity: 'error',
      from: { path: '^packages/sim-core/' },
      to: { path: '^(packages/reports/|@noonloop/reports)' },
    },
    {
      name: 'weather-at-run-time-is-sun-and-calendar',
      comment: 'Of weather-io the simulation takes types, and at run time sun and calendar alone.',
      severity: 'error',
      from: { path: '^packages/sim-core/src/', pathNot: NODE_ONLY },
      to: {
        path: '^packages/weather-io/',
        pathNot: '^packages/weather-io/src/(sun/|time/calendar\\.ts)',
        dependencyTypesNot: ['type-only'],
      },
    },
    ...FLOORS.map((rooms, floor) => ({
      name: `no-import-upwards-${rooms.join('-')}`,
      comment: 'A room of sim-core takes from its own floor and those below, never from one above.',
      severity: 'error',
      from: { path: `^packages/sim-core/src/(${rooms.join('|')})/` },
      to: {
        path: `^packages/sim-core/src/(${[
          'index\\.ts',
          ...FLOORS.slice(floor + 1)
            .flat()
            .map((room) => `${room}/`),
        ].join('|')})`,
      },
    })),
    {
      name: 'ground-floor-stands-alone',
      comment: "What a system is made of needs nothing; how a user's words are read needs no design.",
      severity: 'error',
      from: { path: '^packages/sim-core/src/(input|design)/' },
      to: { path: '^packages/sim-core/src/', pathNot: '^packages/sim-core/src/$1/' },
    },
    {
      name: 'by-the-front-door',
      comment: 'A package takes of another what its exports hand on, never a file inside.',
      severity: 'error',
      from: { path: '^packages/([^/]+)/src/' },
      to: {
        path: '^packages/',
        pathNot: [
          '^packages/$1/',
          '^packages/[^/]+/src/index\\.ts$',
          '^packages/weather-io/src/(sun/index|time/calendar)\\.ts$',
          '^packages/sim-core/src/formulas\\.ts$',
          '^packages/sim-core/src/study/node/index\\.ts$',
          '^packages/sim-core/schema/[^/]+\\.json$',
        ],
      },
    },
    {
      name: 'no-cycle',
      comment: 'No file needs itself at run time. Types may look at each other: they are gone before anything runs.',
      severity: 'error',
      from: { path: '^packages/' },
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'runs-in-a-browser',
      comment: 'No module of Node but where a program of Node begins.',
      severity: 'error',
      from: { path: '^packages/[^/]+/src/', pathNot: NODE_ONLY },
      to: node,
    },
    {
      name: 'no-test-in-a-package',
      severity: 'error',
      from: { path: '^packages/' },
      to: { path: '^(tests|scripts|docs)/' },
    },
    {
      name: 'nothing-unlisted',
      comment: 'What a package imports stands in its package.json.',
      severity: 'error',
      // Of the unit library, packing puts the part that is used into the package.
      from: { path: '^packages/[^/]+/src/', pathNot: '^packages/sim-core/src/input/units\\.ts$' },
      to: {
        pathNot: '^packages/',
        dependencyTypes: ['npm-no-pkg', 'npm-unknown', 'npm-dev', 'unknown', 'undetermined'],
      },
    },
    {
      name: 'nothing-lost',
      comment: 'Every file of a package is reached from somewhere.',
      severity: 'error',
      from: { orphan: true, path: '^packages/[^/]+/src/', pathNot: '\\.d\\.ts$' },
      to: {},
    },
    {
      name: 'nothing-unresolved',
      severity: 'error',
      from: { path: '^packages/' },
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)(dist|node_modules|out)/' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['@noonloop/source', 'types', 'import', 'node', 'default'],
    },
  },
};
