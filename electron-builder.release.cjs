/**
 * The package as it is handed out: electron-builder.config.cjs with the runtime's fuses blown, which needs the real
 * runtime. What each one closes stands beside it.
 */
const base = require('./electron-builder.config.cjs');

/** @type {import('electron-builder').Configuration} */
module.exports = {
  ...base,
  electronFuses: {
    // The program's file cannot be used as a bare Node; its own processes are utility processes.
    runAsNode: false,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    // Code comes from the archive and from nowhere else, and the archive must be the one that was packaged.
    onlyLoadAppFromAsar: true,
    enableEmbeddedAsarIntegrityValidation: true,
    // The page comes from the program's own scheme; file: gets no more than it has in any browser.
    grantFileProtocolExtraPrivileges: false,
    enableCookieEncryption: true,
  },
};
