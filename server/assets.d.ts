// Files that the bundler (and the test runner) turn into modules: a grammar into grammars by name, a pattern into its text.
declare module '*.ohm' {
  const grammars: Readonly<Record<string, import('ohm-js').Grammar>>;
  export default grammars;
  export const source: string;
}
declare module '*.quilt' {
  const text: string;
  export default text;
}
