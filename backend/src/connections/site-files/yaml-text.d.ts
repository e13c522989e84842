/** The text of a YAML file, taken in when the program is built. */
declare module '*.yaml?raw' {
  const text: string;
  // The builder gives a file's text as the default export and in no other way.
  // eslint-disable-next-line no-restricted-syntax
  export default text;
}
