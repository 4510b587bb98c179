// Modules under the names by which they are imported, and what is in them by category: the folder in which a thing is written.
import { readFileSync } from 'node:fs';
import { Comment, CommentTag, Converter, ReflectionKind } from 'typedoc';

/** Modules by their entry file. */
const MODULES = {
  'weather-io/src/index.ts': '@noonloop/weather-io',
  'sim-core/src/index.ts': '@noonloop/sim-core',
  'sim-core/src/formulas.ts': '@noonloop/sim-core/formulas',
  'sim-core/src/study/node/index.ts': '@noonloop/sim-core/node',
  'reports/src/index.ts': '@noonloop/reports',
};

/** Category by how the path begins, the first that fits; behind packages/. */
const CATEGORIES = [
  ['weather-io/src/draw-file/', 'Record of hot water'],
  ['weather-io/src/log/', 'Record of gauges'],
  ['weather-io/src/fill/', 'Gaps'],
  ['weather-io/src/gappy', 'Gaps'],
  ['weather-io/src/quality/', 'Quality'],
  ['weather-io/src/synthesize/', 'A year from twelve months'],
  ['weather-io/src/irradiance/', 'Sun and light'],
  ['weather-io/src/sun/', 'Sun and light'],
  ['weather-io/', 'Files to a year'],
  ['sim-core/src/define/', 'Design, as written'],
  ['sim-core/src/input/saying', 'Codes and workings'],
  ['sim-core/src/input/step-codes', 'Codes and workings'],
  ['sim-core/src/input/working', 'Codes and workings'],
  ['sim-core/src/advice/advice-codes', 'Codes and workings'],
  ['sim-core/src/input/', 'Design, as written'],
  ['sim-core/src/design/', 'Design, whole'],
  ['sim-core/src/year/', 'A year'],
  ['sim-core/src/study/node/', 'Threads, files, machines'],
  ['sim-core/src/study/sensitivity/', 'Studies: what matters'],
  ['sim-core/src/study/search/', 'Studies: the best'],
  ['sim-core/src/study/', 'Studies'],
  ['sim-core/src/advice/sizing/', 'Sizes'],
  ['sim-core/src/advice/survey/', 'Used panels'],
  ['sim-core/src/advice/freeze/', 'Freezing and glycol'],
  ['sim-core/src/advice/check/', 'A system at work'],
  ['sim-core/src/advice/gauges/', 'A system at work'],
  ['sim-core/src/physics/sun/', 'Sun on a plane'],
  ['sim-core/src/physics/collector/', 'Collector'],
  ['sim-core/src/physics/pv/', 'PV module'],
  ['sim-core/src/physics/fluid/', 'Fluids'],
  ['sim-core/src/physics/loop/', 'Loop'],
  ['sim-core/src/physics/draw/', 'Draw and mains'],
  ['sim-core/src/physics/backup/', 'Heater behind'],
  ['reports/src/formats/', 'Reports'],
  ['reports/src/options', 'Reports'],
  ['reports/src/errors', 'Reports'],
  ['reports/src/charts/', 'Charts'],
  ['reports/src/cautions/', 'Cautions'],
  ['reports/src/money/', 'Money'],
  ['reports/src/answer/', 'Sentences'],
  ['reports/src/sentences', 'Sentences'],
  ['reports/src/words/', 'Sentences'],
  ['reports/', 'Numbers'],
];

const fileOf = (project, reflection) =>
  project
    .getSymbolIdFromReflection(reflection)
    ?.fileName.replaceAll('\\', '/')
    .replace(/^.*\/packages\//, '') ?? '';

export function load(app) {
  app.converter.on(Converter.EVENT_RESOLVE_BEGIN, ({ project }) => {
    for (const module of project.children ?? []) {
      if (module.kind !== ReflectionKind.Module) continue;
      module.name = MODULES[fileOf(project, module)] ?? module.name;
      tag(module, '@group', 'Reference');
      introduce(module);
      for (const child of module.children ?? []) categorise(project, child);
    }
  });
}

function categorise(project, reflection) {
  const file = fileOf(project, reflection);
  const category = CATEGORIES.find(([start]) => file.startsWith(start))?.[1];
  if (category === undefined) return;
  // A function's comment stands on its signatures.
  for (const part of reflection.signatures ?? [reflection]) tag(part, '@category', category);
}

function tag(reflection, name, text) {
  reflection.comment ??= new Comment();
  reflection.comment.blockTags.push(new CommentTag(name, [{ kind: 'text', text }]));
}

/** The package's own words before the list of its names. */
function introduce(module) {
  const [, name, part] = /^@noonloop\/([^/]+)(\/.*)?$/.exec(module.name);
  if (part !== undefined) return;
  const text = readFileSync(new URL(`../../packages/${name}/README.md`, import.meta.url), 'utf8');
  module.readme = [{ kind: 'text', text: text.replace(/^# .*\n\n/, '') }];
}
