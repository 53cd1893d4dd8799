/** Bounds on a file from elsewhere, so that no file can hang or fill the tablet. */
export const FILE_BYTES_MAX = 64 * 1024 * 1024;
export const FILE_LINES_MAX = 200_000;
