// Text files that the bundler (and the test runner) turn into strings.
declare module '*.ohm' {
  const text: string;
  export default text;
}
declare module '*.quilt' {
  const text: string;
  export default text;
}
