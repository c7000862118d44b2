/** One line of the program taken away, and the test that must notice. */
export type Break = {
  /** What is taken away, in a few words. */
  readonly breaks: string;
  /** Path within the project. */
  readonly file: string;
  /** Occurs in the file exactly once. */
  readonly find: string;
  readonly replace: string;
  /** Path of the test file within tests/, and a part of the name of the test or tests. */
  readonly reddens: { readonly file: string; readonly test: string };
};
