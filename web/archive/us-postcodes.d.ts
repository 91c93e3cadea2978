/** The list of ZIP codes, as `data-scripts/serve/vite-us-postcodes.ts` makes it. */
declare module 'virtual:us-postcodes' {
  /** Address of the list. */
  export const url: string;
  /** Its size as it is sent, bytes. */
  export const bytes: number;
}
