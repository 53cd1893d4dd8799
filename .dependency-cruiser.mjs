// The walls of the house. Imports point down only: main, desk -> ui, copies -> analysis, file, journal -> record, aero.
// A breach prints the comment of its wall: what to move.

const wall = (name, comment, from, to) => ({ name, comment, severity: 'error', from, to });

/** Everything that a room may reach: itself, the rooms named, and the packages named; any other import is a breach. */
const room = (name, comment, { rooms = [], files = [], packages = [], kindsNot = [] }) =>
  wall(
    `${name}-reaches-only-its-own`,
    comment,
    { path: `^src/${name}/` },
    {
      pathNot: [
        ...[name, ...rooms].map((allowed) => `^src/${allowed}/`),
        ...files.map((allowed) => `^src/${allowed.replaceAll('.', '[.]')}$`),
        ...packages.map((allowed) => `node_modules/(@types/)?${allowed}/`),
      ],
      ...(kindsNot.length > 0 && { dependencyTypesNot: kindsNot }),
    },
  );

export default {
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'types', 'default'],
    },
  },
  forbidden: [
    room('aero', 'Physics knows no entry and no library. Move the caller, not the import.', {}),
    room('record', 'What was written down needs its hash and its schemas. Move the caller.', {
      packages: ['@noble/hashes', 'valibot'],
    }),
    room('analysis', 'What it means is worked out of entries and physics, and nothing else.', {
      rooms: ['record', 'aero'],
    }),
    room('file', 'A file turns text into entries and back; it knows no device and no screen.', {
      rooms: ['record', 'aero'],
      packages: ['luxon', 'valibot'],
    }),
    room(
      'handover',
      'What is handed over is made of a file and what it means; it writes nothing.',
      {
        rooms: ['analysis', 'file', 'record', 'aero'],
        packages: ['hyparquet-writer'],
      },
    ),
    room('journal', 'The journal keeps entries; what they mean is worked out above it.', {
      rooms: ['record'],
      packages: ['idb'],
    }),
    room('copies', 'A copy is made of a file and the journal interface; main.tsx hands it in.', {
      rooms: ['analysis', 'file', 'record', 'aero'],
      files: ['journal/journal.ts'],
      packages: ['valibot'],
    }),
    room(
      'ui',
      'Screens see the journal through journal.ts and nothing of copies; main.tsx joins.',
      {
        rooms: ['handover', 'analysis', 'file', 'record', 'aero'],
        files: ['journal/journal.ts'],
        // perfect-freehand: the outline of an inked stroke, for notes drawn by hand and for nothing else.
        packages: ['react', 'react-dom', 'luxon', 'valibot', 'perfect-freehand'],
      },
    ),
    room(
      'desk',
      'The command line works on the same record, file and analysis; it has no screen.',
      {
        rooms: ['handover', 'analysis', 'file', 'record', 'aero'],
        kindsNot: ['core'],
      },
    ),
    room('sw', 'The worker starts the app when nothing else can; it stands alone.', {}),
    wall(
      'phases-stay-apart',
      'Brief, Fly and Debrief never import each other: what two need goes to ui/kit, main.tsx joins.',
      { path: '^src/ui/(brief|fly|debrief)/' },
      { path: '^src/ui/(brief|fly|debrief)/', pathNot: '^src/ui/$1/' },
    ),
    wall(
      'nobody-imports-main',
      'main.tsx joins the rooms; a room is handed what it needs.',
      {},
      {
        path: '^src/main[.]tsx$',
      },
    ),
    wall(
      'source-never-needs-tests',
      'Move it to the room that it is about.',
      { path: '^src/' },
      {
        path: '^test/',
      },
    ),
    wall(
      'no-cycles',
      'Two files that need each other are one file, or hide a third.',
      {},
      {
        circular: true,
      },
    ),
    wall(
      'everything-is-found',
      'The import names nothing, or a package that package.json does not list.',
      {},
      { couldNotResolve: true },
    ),
    wall(
      'no-packages-of-the-workshop',
      'The app may only use what stands under dependencies.',
      { path: '^src/' },
      { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'], pathNot: '@types/' },
    ),
  ],
};
