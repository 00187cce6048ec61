declare module '*.css?raw' {
  const text: string;
  export default text;
}

/** Made by `scripts/shippedFiles.ts`. */
declare module 'virtual:shipped' {
  const text: string;
  export default text;
}
