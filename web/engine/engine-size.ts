/** Sizes of the engine's two files after decompression, for progress; a test compares them with the installed package. */
export const WASM_BYTES = 34_242_586;
export const WORKER_BYTES = 772_759;
