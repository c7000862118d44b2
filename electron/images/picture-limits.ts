/**
 * What a picture may be at most. Larger ones are refused before anything is decoded.
 * The figures are this program's own: what a decoder on a workshop computer with 8 GB of memory copes with.
 */
export const pictureLimits = {
  /** Of the file; a megabyte is 10^6 bytes. */
  megabytes: 200,
  /** Pictures that are decoded row by row, in little memory. A megapixel is 10^6 pixels. */
  megapixelsByRows: 250,
  /** Interlaced PNG: the whole picture is held in memory, up to 8 bytes a pixel. */
  megapixelsInterlaced: 60,
  /** Progressive JPEG: all coefficients are held in memory, up to 8 bytes a pixel (four components). */
  megapixelsProgressive: 100,
} as const;
