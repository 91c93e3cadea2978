/** Addresses of the catalogues, by language; made by `data-scripts/language/vite-catalogues.ts`. */
declare module 'virtual:catalogues' {
  const addresses: Readonly<Record<'es', string>>;
  export default addresses;
}
