/** The part of gettext-parser that is used here; it comes without types. */
declare module 'gettext-parser' {
  interface Message {
    msgid: string;
    msgstr: string[];
    comments?: { translator?: string; reference?: string; extracted?: string; flag?: string };
  }
  interface Catalogue {
    charset: string;
    headers: Record<string, string>;
    translations: Record<string, Record<string, Message>>;
  }
  export const po: {
    parse(text: string): Catalogue;
    compile(catalogue: Catalogue, options: { foldLength: number }): Uint8Array;
  };
}
