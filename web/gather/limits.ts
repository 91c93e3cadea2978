/** Most bytes of one file as it is brought. */
export const FILE_BYTES_MAX = 100e6;
/** Most bytes of one file's text, unpacked. */
export const TEXT_BYTES_MAX = 300e6;
/** Most bytes of all files together, as they are brought. */
export const ALL_BYTES_MAX = 300e6;
/** Most files at a time. */
export const FILES_MAX = 2000;
/** Most stations of one's own in a pack. */
export const STATIONS_MAX = 500;
/** A larger pack can't be joined, bytes of all its files: its nights are copied. */
export const JOINED_BYTES_MAX = 150e6;
/** Most bytes of a pack folder, all its files together. */
export const PACK_BYTES_MAX = 1e9;
/** Most bytes of a part of a pack folder that is looked into, which is any but the database. */
export const PART_BYTES_MAX = 60e6;
