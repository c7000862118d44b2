/** Programs that the tests measure against or drive, and the Debian package that brings each. */
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { Refusal } from './project.mjs';

const packageOfTool = {
  chromium: 'chromium',
  pdftoppm: 'poppler-utils',
  pdftotext: 'poppler-utils',
  pdffonts: 'poppler-utils',
  qpdf: 'qpdf',
  exiftool: 'libimage-exiftool-perl',
  'heif-enc': 'libheif-examples',
  sqlite3: 'sqlite3',
};

/** Not a program: a font that the raster checks of a PDF fall back on. */
const font = { path: '/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf', package: 'fonts-dejavu-core' };

function isOnPath(tool) {
  return (process.env.PATH ?? '').split(delimiter).some((folder) => {
    try {
      accessSync(join(folder, tool), constants.X_OK);
      return true;
    } catch (error) {
      if (error.code === 'ENOENT' || error.code === 'EACCES' || error.code === 'ENOTDIR') return false;
      throw error;
    }
  });
}

/** @throws {Refusal} naming every missing tool, its package and the one command that installs them all */
export function requireDebianTools() {
  const missing = Object.entries(packageOfTool).filter(([tool]) => !isOnPath(tool));
  if (!existsSync(font.path)) missing.push([`the font ${font.path}`, font.package]);
  if (missing.length === 0) return;
  const packages = [...new Set(missing.map(([, name]) => name))];
  throw new Refusal(
    `The tests need what is not on this machine:\n${missing.map(([tool, name]) => `  ${tool} (package ${name})`).join('\n')}\n` +
      `Install it with: apt-get install ${packages.join(' ')}\n` +
      'or let .ci/run do it as root.',
  );
}
