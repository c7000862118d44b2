/**
 * The lint rule that keeps the layers apart: shared-types <- analysis <- {electron, renderer}. It resolves every import,
 * re-export, import() and import type to the place it names and compares that with what the importing file's layer may
 * use.
 */
import { builtinModules } from 'node:module';
import { dirname, relative, resolve } from 'node:path';
import { root } from '../project.mjs';

const productLayers = ['shared-types', 'analysis', 'electron', 'renderer'];

const mayImport = {
  'shared-types': ['shared-types'],
  analysis: ['analysis', 'shared-types'],
  electron: ['electron', 'analysis', 'shared-types'],
  renderer: ['renderer', 'analysis', 'shared-types'],
};

/** Packages that only Node code can use: those of the page's program would not even build. */
const packagesOfElectron = ['better-sqlite3', 'sharp', 'exifr', 'pdfmake', 'pdf-lib'];
/** The only packages of the two layers that everything else stands on: they compute and touch nothing. */
const packagesOfPureLayers = { 'shared-types': ['zod'], analysis: ['zod', '@dagrejs/dagre', 'marked'] };

/** The only files that know the desktop runtime. */
const knowsTheRuntime = /^electron\/(main\.ts|preload\.ts|shell\/)/;
const knowsTheDatabase = /^electron\/database\//;

/** What an import specifier names: {layer}, {builtin}, {runtime} or {package}. */
function placeOf(specifier, fileName) {
  const ours = /^#(shared-types|analysis)\//.exec(specifier);
  if (ours) return { layer: ours[1] };
  if (specifier.startsWith('.')) {
    const path = relative(root, resolve(dirname(fileName), specifier)).replaceAll('\\', '/');
    return { layer: path.split('/')[0] };
  }
  if (specifier.startsWith('node:') || builtinModules.includes(specifier)) return { builtin: specifier };
  const parts = specifier.split('/');
  const name = specifier.startsWith('@') ? parts.slice(0, 2).join('/') : parts[0];
  return name === 'electron' ? { runtime: true } : { package: name };
}

/** The id of the message that an import deserves, or null. */
function verdict(place, file, isTypeOnly) {
  const layer = file.split('/')[0];
  if (place.runtime && !knowsTheRuntime.test(file) && !isTypeOnly) return 'runtime';
  if (!productLayers.includes(layer)) return null;
  if (place.runtime) return knowsTheRuntime.test(file) ? null : 'runtime';
  if (place.layer !== undefined) return mayImport[layer].includes(place.layer) ? null : 'layer';
  if (place.builtin !== undefined) return layer === 'electron' ? null : 'node';
  if (layer === 'electron') {
    return place.package === 'better-sqlite3' && !isTypeOnly && !knowsTheDatabase.test(file)
      ? 'database'
      : null;
  }
  if (layer === 'renderer') return packagesOfElectron.includes(place.package) ? 'package' : null;
  return packagesOfPureLayers[layer].includes(place.package) ? null : 'package';
}

export const layersRule = {
  meta: {
    type: 'problem',
    schema: [],
    messages: {
      layer:
        '{{file}} may not import {{specifier}}: the layers are shared-types <- analysis <- electron and renderer.',
      node: '{{specifier}} is Node: only electron/ may use it.',
      runtime: 'Only electron/main.ts, electron/preload.ts and electron/shell/ know the desktop runtime.',
      database: 'Only electron/database/ opens databases; elsewhere import the type.',
      package: '{{layer}} does not use the package {{specifier}}.',
    },
  },
  create(context) {
    const file = relative(root, context.filename).replaceAll('\\', '/');
    const judge = (node, source, isTypeOnly) => {
      if (source?.type !== 'Literal' || typeof source.value !== 'string') return;
      const messageId = verdict(placeOf(source.value, context.filename), file, isTypeOnly);
      if (messageId === null) return;
      context.report({ node, messageId, data: { file, specifier: source.value, layer: file.split('/')[0] } });
    };
    return {
      ImportDeclaration: (node) => judge(node, node.source, node.importKind === 'type'),
      ExportNamedDeclaration: (node) => judge(node, node.source, node.exportKind === 'type'),
      ExportAllDeclaration: (node) => judge(node, node.source, node.exportKind === 'type'),
      ImportExpression: (node) => judge(node, node.source, false),
      TSImportType: (node) => judge(node, node.source ?? node.argument?.literal, true),
      CallExpression: (node) => {
        if (node.callee.type === 'Identifier' && node.callee.name === 'require')
          judge(node, node.arguments[0], false);
      },
    };
  },
};
