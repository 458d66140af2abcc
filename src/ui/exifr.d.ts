declare module 'exifr/dist/lite.esm.mjs' {
  export { parse } from 'exifr';
}
