/** The rooms of src-shared from the ground up: each imports only what stands before it. */
const rooms = [
  "units|diagnostic|wordTable",
  "neck",
  "harmony",
  "chart",
  "voicing",
  "roll",
  "route",
  "score",
  "jam",
  "practice",
  "exchange",
  "control",
  "wording",
  "settings",
  "chartToScore",
  "book",
  "sheet",
  "host",
  "demo",
];
const room = (names) => `^src-shared/(${names})(/|\\.ts$)`;
const upward = rooms.slice(0, -1).map((names, index) => ({
  name: `shared-${names.split("|")[0]}-looks-up`,
  comment: `src-shared/${names} may import only rooms below it`,
  severity: "error",
  from: { path: room(names) },
  to: { path: room(rooms.slice(index + 1).join("|")) },
}));

/** The rooms of the screen, likewise; parts see no state, sound or host at all. */
const screenRooms = ["theme|geometry|hosts", "sound", "state", "parts", "screens", "main|app"];
const screenRoom = (names) => `^src-renderer/(${names})(/|\\.ts$|\\.svelte$)`;
const screenUpward = screenRooms.slice(0, -1).map((names, index) => ({
  name: `screen-${names.split("|")[0]}-looks-up`,
  severity: "error",
  from: { path: screenRoom(names) },
  to: { path: screenRoom(screenRooms.slice(index + 1).join("|")) },
}));

module.exports = {
  forbidden: [
    { name: "no-cycles", severity: "error", from: {}, to: { circular: true } },
    {
      name: "not-to-unresolvable",
      severity: "error",
      from: {},
      to: { couldNotResolve: true, pathNot: "^electron$" },
    },
    ...upward,
    ...screenUpward,
    {
      name: "parts-know-nothing",
      severity: "error",
      from: { path: "^src-renderer/parts/" },
      to: { path: "^src-renderer/(state|sound|hosts)/" },
    },
    {
      name: "shared-knows-no-machine",
      severity: "error",
      from: { path: "^src-shared/" },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "shared-is-alone",
      severity: "error",
      from: { path: "^src-shared/" },
      to: { path: "^(src-main|src-renderer)/|node_modules/(electron|tone|svelte)/" },
    },
    {
      name: "main-knows-no-screen",
      severity: "error",
      from: { path: "^src-main/" },
      to: { path: "^src-renderer/" },
    },
    {
      name: "screen-knows-no-main",
      severity: "error",
      from: { path: "^src-renderer/" },
      to: { path: "^src-main/" },
    },
    {
      name: "electron-only-in-desktop",
      severity: "error",
      from: { path: "^src-main/", pathNot: "^src-main/desktop/" },
      to: { path: "node_modules/electron/|^electron$" },
    },
    {
      name: "one-reader-of-chord-names",
      severity: "error",
      from: { path: "^src-shared/", pathNot: "^src-shared/harmony/" },
      to: { path: "node_modules/(@?tonal|@tonaljs)" },
    },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.base.json" },
    extraExtensionsToScan: [".svelte"],
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      extensions: [".ts", ".svelte", ".js", ".mjs"],
      conditionNames: ["import", "svelte", "types"],
    },
  },
};
