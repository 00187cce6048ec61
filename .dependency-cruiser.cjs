// The import rule: a room knows only the rooms on lower floors; rooms on one floor never meet.
const floors = [
  ['units', 'numerics'],
  ['air'],
  ['rotor', 'drive', 'airframe', 'view'],
  ['flight', 'knocks', 'evidence'],
  ['build'],
  ['assess'],
  ['choose'],
  ['report'],
  ['cli', 'web'],
];
const forbidden = [];
floors.forEach((rooms, floor) => {
  for (const room of rooms) {
    const upward = floors.slice(floor + 1).flat();
    const beside = rooms.filter((other) => other !== room);
    const banned = [...upward, ...beside];
    if (banned.length > 0) {
      forbidden.push({
        name: `${room}-knows-only-lower-floors`,
        severity: 'error',
        from: { path: `^src/${room}/` },
        to: { path: `^src/(${banned.join('|')})/` },
      });
    }
  }
});
forbidden.push(
  { name: 'no-cycles', severity: 'error', from: { path: '^src/' }, to: { circular: true } },
  {
    name: 'only-doors-touch-the-machine',
    severity: 'error',
    comment: 'files, clock and process belong to the command line, the page and scripts',
    from: { path: '^src/(?!cli/|web/)' },
    to: { dependencyTypes: ['core'] },
  },
);
module.exports = {
  forbidden,
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.js', '.mjs', '.json'] },
  },
};
