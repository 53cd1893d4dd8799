declare const __BUILD_ID__: string;

/** Version and digest of the files that this page was built from, for example 0.1.0-3fa9c1d2e0. */
export const BUILD_ID = __BUILD_ID__;
