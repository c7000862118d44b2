/** What the compiler says of a text that would lie in a layer's folder, under that layer's own tsconfig. */
import { join, resolve } from 'node:path';
import ts from 'typescript';

export const root = resolve(import.meta.dirname, '..', '..');

function optionsOf(layer: string): ts.CompilerOptions {
  const path = join(root, layer, 'tsconfig.json');
  const read = ts.readConfigFile(path, (file) => ts.sys.readFile(file));
  if (read.error) throw new Error(ts.flattenDiagnosticMessageText(read.error.messageText, '\n'));
  const { options } = ts.parseJsonConfigFileContent(read.config, ts.sys, join(root, layer));
  return { ...options, noEmit: true, composite: false, emitDeclarationOnly: false, declaration: false };
}

/** The compiler's complaints about the text alone, one string each; none when it is sound there. */
export function diagnose(layer: string, text: string): string[] {
  const options = optionsOf(layer);
  const path = join(root, layer, 'text-under-diagnosis.ts');
  const host = ts.createCompilerHost(options);
  const { readFile, fileExists, getSourceFile } = host;
  host.fileExists = (file) => file === path || fileExists(file);
  host.readFile = (file) => (file === path ? text : readFile(file));
  host.getSourceFile = (file, languageVersion, ...rest) =>
    file === path
      ? ts.createSourceFile(file, text, languageVersion, true)
      : getSourceFile(file, languageVersion, ...rest);
  const program = ts.createProgram([path], options, host);
  const source = program.getSourceFile(path);
  const found = [
    ...program.getOptionsDiagnostics(),
    ...program.getSyntacticDiagnostics(source),
    ...program.getSemanticDiagnostics(source),
  ];
  return found.map((diagnostic) => ts.flattenDiagnosticMessageText(diagnostic.messageText, '\n'));
}
