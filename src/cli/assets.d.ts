/** A file's text, put into the program when it is built. */
declare module '*.css?raw' {
  const text: string;
  export default text;
}
