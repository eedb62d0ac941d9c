// Files that the bundler (and the test runner) turn into modules: a grammar into grammars by name, a pattern into its text.
declare module '*.ohm' {
  import type { Grammar } from 'ohm-js';
  const grammars: Readonly<Record<string, Grammar>>;
  export default grammars;
  export const source: string;
}
declare module '*.quilt' {
  const text: string;
  export default text;
}
